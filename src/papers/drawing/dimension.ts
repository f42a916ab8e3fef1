/** A dimension beside a straight edge, drafted as usual: witness lines, arrows at both ends, the figure along its line. */
import { firstOf, itemAt, lastOf } from "../../units/certain.ts";
import { FIGURE, type Ink, THIN, widthOf } from "./ink.ts";
import { at, type Point, path } from "./svg.ts";

const GAP = 0.8; // mm between an edge and its witness line
const OVER = 1; // mm that a witness line goes beyond the dimension line
const FIRST = 5; // mm from the edge to the nearest dimension line, and from one to the next
const ARROW = 2;
const MOST_ROWS = 24; // rows that are tried

export interface Dimension {
  readonly from: Point;
  readonly to: Point;
  readonly words: string;
  readonly size?: number;
  readonly bold?: boolean;
}

/**
 * Moved out, to the left of the way `from` - `to`, row by row until line and figure are free. Read from below or from
 * the right. Answers how far out it came to stand, mm.
 */
export function dimension(
  ink: Ink,
  { from: a, to: b, words, size = FIGURE, bold = false }: Dimension,
  least = 0,
): number {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const out: Point = [along[1], -along[0]];
  const shifted = ([x, y]: Point, by: number): Point => [x + out[0] * by, y + out[1] * by];
  const angle = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  const turn = angle > 90 - 1e-9 ? angle - 180 : angle <= -90 - 1e-9 ? angle + 180 : angle;
  // A figure wider than its dimension stands beyond the ends of the witness lines, else they would run into it.
  const beyond = widthOf(words, size) > length ? OVER / 2 : 0;
  const middleAt = (away: number): Point => shifted([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], away + size * 0.8 + beyond);
  let away = Math.max(FIRST, least);
  for (let row = 0; row < MOST_ROWS; row++, away += FIRST) {
    const inset = Math.min(1, length / 4); // a neighbor's arrow may touch the end
    const [from, to] = [shifted(a, away), shifted(b, away)];
    const isClear = ink.isLineFree(
      [from[0] + along[0] * inset, from[1] + along[1] * inset],
      [to[0] - along[0] * inset, to[1] - along[1] * inset],
    );
    if (isClear && ink.isFree(middleAt(away), words, { size, turn })) break;
  }
  for (const end of [a, b]) ink.line(shifted(end, GAP), shifted(end, away + OVER), THIN);
  ink.line(shifted(a, away), shifted(b, away), THIN);
  const arrow = Math.min(ARROW, length / 2);
  ink.add(head(shifted(a, away), along, arrow) + head(shifted(b, away), [-along[0], -along[1]], arrow), []);
  ink.text(middleAt(away), words, { size, turn, bold });
  return away;
}

export interface Chain {
  /** Distances from the origin along the edge, at least two, rising. */
  readonly stops: readonly number[];
  /** Of every gap: decimals, and below them what a rule shows. */
  readonly words: readonly (readonly string[])[];
}

/**
 * Gap after gap along an edge on one line below it. Figures wider than their gap are moved apart, each tied to its gap by
 * a thin line, so that they never cross a witness line. Answers how far out it reaches, mm.
 */
export function chainBelow(ink: Ink, edge: number, { stops, words }: Chain, size = FIGURE): number {
  const y = edge + FIRST;
  for (const stop of stops) ink.line([stop, edge + GAP], [stop, y + OVER], THIN);
  ink.line([firstOf(stops), y], [lastOf(stops), y], THIN);
  const widths = words.map((lines) => Math.max(...lines.map((line) => widthOf(line, size))) + size * 0.6);
  const middles = words.map((_, i) => (itemAt(stops, i) + itemAt(stops, i + 1)) / 2);
  const isUpright = widths.reduce((sum, width) => sum + width, 0) > MOST_FIGURES;
  const takes = isUpright ? widths.map(() => size * 1.4) : widths;
  const places = between(firstOf(stops), lastOf(stops), spread(middles, takes), takes);
  // One figure that has no room in its gap moves all of them down: they stay in one row.
  const isTight = widths.some((width, i) => width > itemAt(stops, i + 1) - itemAt(stops, i));
  words.forEach((lines, i) => {
    const [from, to] = [itemAt(stops, i), itemAt(stops, i + 1)];
    const arrow = Math.min(ARROW, (to - from) / 2);
    ink.add(head([from, y], [1, 0], arrow) + head([to, y], [-1, 0], arrow), []);
    const top = y + (isTight ? LEADER : 0.6) + size * 0.5;
    if (isTight) ink.line([itemAt(middles, i), y + OVER + 0.4], [itemAt(places, i), y + LEADER - 0.3], THIN);
    if (isUpright) {
      const whole = lines.join(" · ");
      ink.text([itemAt(places, i), y + LEADER + widthOf(whole, size) / 2], whole, { size, turn: -90 });
      return;
    }
    lines.forEach((line, k) => {
      ink.text([itemAt(places, i), top + k * size * 1.15], line, { size: k === 0 ? size : size * 0.85 });
    });
  });
  return ink.box.bottom - edge;
}
const LEADER = 3;
const MOST_FIGURES = 110; // mm of figures side by side; more stand upright

/** Moved in between the ends where all have room there, so that the witness lines of the whole run clear of them. */
function between(start: number, end: number, middles: readonly number[], widths: readonly number[]): readonly number[] {
  const total = widths.reduce((sum, width) => sum + width, 0);
  if (total > end - start) return middles;
  let before = 0;
  return middles.map((middle, i) => {
    const own = itemAt(widths, i);
    const [least, most] = [start + before + own / 2, end - (total - before) + own / 2];
    before += own;
    return Math.min(Math.max(middle, least), most);
  });
}

/** Middles moved as little as needed so that none overlaps its neighbor; their order stays. */
export function spread(middles: readonly number[], widths: readonly number[]): number[] {
  // Least squares with least distances: neighbors that meet move as one block about the mean of what they want.
  const blocks: { start: number; end: number; offset: number; count: number }[] = [];
  const before = middles.map(
    (_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, 0) + itemAt(widths, i) / 2,
  );
  middles.forEach((middle, i) => {
    blocks.push({ start: i, end: i, offset: middle - itemAt(before, i), count: 1 });
    for (let last = lastOf(blocks), prior = blocks.at(-2); prior && prior.offset > last.offset; ) {
      const count = prior.count + last.count;
      const offset = (prior.offset * prior.count + last.offset * last.count) / count;
      blocks.splice(-2, 2, { start: prior.start, end: last.end, offset, count });
      [last, prior] = [lastOf(blocks), blocks.at(-2)];
    }
  });
  return blocks.flatMap(({ start, end, offset }) =>
    Array.from({ length: end - start + 1 }, (_, k) => offset + itemAt(before, start + k)),
  );
}

/** An arrow's head with its tip here, pointing against `inward`. */
function head([x, y]: Point, [dx, dy]: Point, size: number): string {
  const side = size * 0.18;
  const corner = (sign: number) => `${at(x + dx * size - sign * dy * side)} ${at(y + dy * size + sign * dx * side)}`;
  return path(`M ${corner(1)} L ${at(x)} ${at(y)} L ${corner(-1)} Z`, {
    fill: "currentColor",
    stroke: "none",
  });
}
