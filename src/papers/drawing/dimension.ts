/** A dimension beside a straight edge: two witness lines, a line between them with short slanted ticks, the figure. */
import { at, LETTERS, line, type Point, text } from "./svg.ts";

/** `away`: distance from the edge, to the left of the way from `a` to `b`. */
export function dimension(a: Point, b: Point, away: number, words: string, letter: number): string {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const off: Point = [along[1], -along[0]];
  const shifted = ([x, y]: Point, by: number): Point => [x + off[0] * by, y + off[1] * by];
  const from = shifted(a, away);
  const to = shifted(b, away);
  const thin = { "stroke-width": letter / 24 };
  const tick = (place: Point): string => {
    const half = letter / 4;
    const slant: Point = [(along[0] + off[0]) * half, (along[1] + off[1]) * half];
    return line([place[0] - slant[0], place[1] - slant[1]], [place[0] + slant[0], place[1] + slant[1]]);
  };
  const gap = Math.sign(away) * letter * 0.25;
  const middle = shifted([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], away + Math.sign(away) * letter * 0.6);
  return [
    line(shifted(a, gap), shifted(a, away + gap), thin),
    line(shifted(b, gap), shifted(b, away + gap), thin),
    line(from, to, thin),
    tick(from),
    tick(to),
    text(middle, words, { ...LETTERS, "dominant-baseline": "middle", transform: rotation(along, middle) }),
  ].join("");
}

/** The figure runs with its line and is never upside down. */
function rotation([x, y]: Point, [cx, cy]: Point): string | undefined {
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  const readable = angle > 90 + 1e-9 ? angle - 180 : angle < -90 + 1e-9 ? angle + 180 : angle;
  return Math.abs(readable) < 1e-9 ? undefined : `rotate(${at(readable)} ${at(cx)} ${at(cy)})`;
}
