import { missing } from "../../../units/certain.ts";
import { pointToLine } from "./distance.ts";
import type { Piece } from "./piece.ts";
import { contains, type Solid } from "./solid.ts";

/** Point of a piece at fraction t of its length. */
function along(p: Piece, t: number): [number, number] {
  if (!p.arc) return [p.ax + t * (p.bx - p.ax), p.ay + t * (p.by - p.ay)];
  const half = Math.acos(Math.max(-1, Math.min(1, p.cosine)));
  const middle = Math.atan2(p.my, p.mx);
  const angle = middle + (2 * t - 1) * half;
  return [p.cx + p.radius * Math.cos(angle), p.cy + p.radius * Math.sin(angle)];
}

/**
 * How far, in millimeters, the solid would have to be set back to clear the piece. The depth of a point changes by at
 * most the distance walked, so halving the piece and dropping halves that cannot be deeper finds the deepest point to
 * 0.01 mm. Answers `known` when nothing is deeper.
 */
export function depthIn(s: Solid, p: Piece, known = -Infinity): number {
  const depth = (t: number): number => {
    const [x, y] = along(p, t);
    const { xs, ys } = s;
    let least = Infinity;
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
      const [xj, yj] = [xs[j] ?? missing(), ys[j] ?? missing()];
      least = Math.min(least, pointToLine(x, y, xj, yj, xs[i] ?? missing(), ys[i] ?? missing()));
    }
    return contains(s, x, y) ? Math.sqrt(least) : -Math.sqrt(least);
  };
  const length = p.arc
    ? 2 * Math.acos(Math.max(-1, Math.min(1, p.cosine))) * p.radius
    : Math.hypot(p.bx - p.ax, p.by - p.ay);
  let deepest = Math.max(depth(0), depth(1), known - p.half);
  const search = (from: number, to: number): void => {
    const here = depth((from + to) / 2);
    deepest = Math.max(deepest, here);
    const reach = ((to - from) / 2) * length;
    if (here + reach <= deepest + 0.01) return;
    search(from, (from + to) / 2);
    search((from + to) / 2, to);
  };
  search(0, 1);
  return deepest + p.half;
}
