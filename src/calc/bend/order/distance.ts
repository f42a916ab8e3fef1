import { missing } from "../../../units/certain.ts";
import type { Piece } from "./piece.ts";
import { contains, type Solid } from "./solid.ts";

/** Squared distance of a point and a segment. */
export function pointToLine(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  let t = length > 0 ? ((px - ax) * dx + (py - ay) * dy) / length : 0;
  if (t < 0) t = 0;
  else if (t > 1) t = 1;
  const x = ax + t * dx - px;
  const y = ay + t * dy - py;
  return x * x + y * y;
}

/** Squared distance of the straight at k of a layout, moved by (x, y), and a segment; -1 where they cross. */
function lineToLine(
  g: Float64Array,
  k: number,
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const px = (g[k] ?? missing()) + x;
  const py = (g[k + 1] ?? missing()) + y;
  const qx = (g[k + 2] ?? missing()) + x;
  const qy = (g[k + 3] ?? missing()) + y;
  const dx = bx - ax;
  const dy = by - ay;
  const ex = qx - px;
  const ey = qy - py;
  const side = dx * (py - ay) - dy * (px - ax);
  const other = dx * (qy - ay) - dy * (qx - ax);
  if (side * other < 0) {
    const a = ex * (ay - py) - ey * (ax - px);
    const b = ex * (by - py) - ey * (bx - px);
    if (a * b < 0) return -1;
  }
  return Math.min(
    pointToLine(px, py, ax, ay, bx, by),
    pointToLine(qx, qy, ax, ay, bx, by),
    pointToLine(ax, ay, px, py, qx, qy),
    pointToLine(bx, by, px, py, qx, qy),
  );
}

/** Whether a direction of that length from the center lies within the sweep of the arc at k. */
const facing = (p: Piece, g: Float64Array, k: number, x: number, y: number, length: number): boolean =>
  x * (g[k + 6] ?? missing()) + y * (g[k + 7] ?? missing()) >= length * p.cosine;

/**
 * Squared distance of an arc and a segment. The nearest pair is one of: the foot of the center, an end of the segment
 * or an end of the arc; or they cross, -1 (derived).
 */
function arcToLine(
  p: Piece,
  g: Float64Array,
  k: number,
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  let best = Math.min(
    pointToLine((g[k] ?? missing()) + x, (g[k + 1] ?? missing()) + y, ax, ay, bx, by),
    pointToLine((g[k + 2] ?? missing()) + x, (g[k + 3] ?? missing()) + y, ax, ay, bx, by),
  );
  const cx = (g[k + 4] ?? missing()) + x;
  const cy = (g[k + 5] ?? missing()) + y;
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  const foot = length > 0 ? ((cx - ax) * dx + (cy - ay) * dy) / length : 0;
  for (let candidate = 0; candidate < 3; candidate++) {
    const t = candidate < 2 ? candidate : Math.max(0, Math.min(1, foot));
    const ux = ax + t * dx - cx;
    const uy = ay + t * dy - cy;
    const away = Math.sqrt(ux * ux + uy * uy);
    if (facing(p, g, k, ux, uy, away)) best = Math.min(best, (away - p.radius) * (away - p.radius));
  }
  const fx = ax + foot * dx - cx;
  const fy = ay + foot * dy - cy;
  const chord = p.radius * p.radius - fx * fx - fy * fy;
  if (chord > 0 && length > 0) {
    const along = Math.sqrt(chord / length);
    for (let sign = -1; sign <= 1; sign += 2) {
      const t = foot + sign * along;
      if (t >= 0 && t <= 1 && facing(p, g, k, ax + t * dx - cx, ay + t * dy - cy, p.radius)) return -1;
    }
  }
  return best;
}

/** Gap reported where the middle line itself is in a tool: surely a collision; `depthIn` says how deep. */
const CROSSED = 0.01;

/**
 * Signed gap in millimeters between the piece placed at k, moved by (x, y), and a solid: negative by how far the tool
 * stands in the sheet. Answers `best` when the gap is not below it.
 */
export function gapTo(s: Solid, p: Piece, g: Float64Array, k: number, x: number, y: number, best: number): number {
  const reach = best + p.half;
  if (reach <= 0) return best;
  const r = p.radius;
  const west = (p.arc ? (g[k + 4] ?? missing()) - r : Math.min(g[k] ?? missing(), g[k + 2] ?? missing())) + x;
  const east = (p.arc ? (g[k + 4] ?? missing()) + r : Math.max(g[k] ?? missing(), g[k + 2] ?? missing())) + x;
  const south = (p.arc ? (g[k + 5] ?? missing()) - r : Math.min(g[k + 1] ?? missing(), g[k + 3] ?? missing())) + y;
  const north = (p.arc ? (g[k + 5] ?? missing()) + r : Math.max(g[k + 1] ?? missing(), g[k + 3] ?? missing())) + y;
  let least = reach * reach;
  const { xs, ys } = s;
  const n = xs.length;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const ax = xs[j] ?? missing();
    const ay = ys[j] ?? missing();
    const bx = xs[i] ?? missing();
    const by = ys[i] ?? missing();
    // Boxes of the edge and the piece further apart than what is known already.
    const h = Math.max(Math.min(ax, bx) - east, west - Math.max(ax, bx), 0);
    const v = Math.max(Math.min(ay, by) - north, south - Math.max(ay, by), 0);
    if (h * h + v * v >= least) continue;
    const square = p.arc ? arcToLine(p, g, k, x, y, ax, ay, bx, by) : lineToLine(g, k, x, y, ax, ay, bx, by);
    if (square < 0) return -p.half - CROSSED;
    if (square < least) least = square;
  }
  if (contains(s, (g[k] ?? missing()) + x, (g[k + 1] ?? missing()) + y)) return -p.half - CROSSED;
  return least < reach * reach ? Math.sqrt(least) - p.half : best;
}
