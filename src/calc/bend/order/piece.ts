import { contains, type Solid } from "./solid.ts";

/**
 * A piece of the sheet's middle line with half the thickness on either side: a straight or a true arc. Thickening the
 * middle line gives both faces of flanges and bends exactly; only free edges need their square end added, as three
 * pieces of no thickness.
 */
export interface Piece {
  arc: boolean;
  half: number;
  /** Flange number; a round carries the number of the flange beyond it. */
  leg: number;
  /** How near the bend being made it lies: that decides which contacts are its working contacts. */
  zone: Zone;
  end: boolean;
  /** Furthest point from the origin of its frame: how fast it swings. */
  arm: number;
  ax: number;
  ay: number;
  bx: number;
  by: number;
  /** Arcs: centre, radius, unit vector from the centre to the middle, cosine of half the sweep. */
  cx: number;
  cy: number;
  radius: number;
  mx: number;
  my: number;
  cosine: number;
}

/** 0 the round being bent, 1 straight from it to the next finished bend, 2 that bend's round, 3 beyond. */
export type Zone = 0 | 1 | 2 | 3;

export function straightPiece(
  leg: number,
  zone: Zone,
  half: number,
  a: readonly [number, number],
  b: readonly [number, number],
  end = false,
): Piece {
  const line = { ax: a[0], ay: a[1], bx: b[0], by: b[1] };
  const arm = Math.max(Math.hypot(...a), Math.hypot(...b)) + half;
  return { arc: false, half, leg, zone, end, arm, ...line, cx: 0, cy: 0, radius: 0, mx: 0, my: 0, cosine: 0 };
}

/** Arc from angle `from` through `sweep` (radians, signed) about a centre. */
export function arcPiece(
  leg: number,
  zone: Zone,
  half: number,
  centre: readonly [number, number],
  radius: number,
  from: number,
  sweep: number,
): Piece {
  const [cx, cy] = centre;
  const to = from + sweep;
  const middle = from + sweep / 2;
  return {
    arc: true,
    half,
    leg,
    zone,
    end: false,
    arm: Math.hypot(cx, cy) + radius + half,
    ax: cx + radius * Math.cos(from),
    ay: cy + radius * Math.sin(from),
    bx: cx + radius * Math.cos(to),
    by: cy + radius * Math.sin(to),
    cx,
    cy,
    radius,
    mx: Math.cos(middle),
    my: Math.sin(middle),
    cosine: Math.cos(sweep / 2),
  };
}

/** Numbers a placed piece takes in a layout: ax, ay, bx, by, cx, cy, mx, my. */
export const STRIDE = 8;

/**
 * Writes a piece, turned by (cos, sin) and moved by (x, y), into a layout at k. A flat array of numbers, because poses
 * are looked at by the hundred thousand and boxed numbers would keep the garbage collector busier than the geometry.
 */
export function place(p: Piece, to: Float64Array, k: number, x: number, y: number, cos: number, sin: number): void {
  to[k] = x + cos * p.ax - sin * p.ay;
  to[k + 1] = y + sin * p.ax + cos * p.ay;
  to[k + 2] = x + cos * p.bx - sin * p.by;
  to[k + 3] = y + sin * p.bx + cos * p.by;
  if (!p.arc) return;
  to[k + 4] = x + cos * p.cx - sin * p.cy;
  to[k + 5] = y + sin * p.cx + cos * p.cy;
  to[k + 6] = cos * p.mx - sin * p.my;
  to[k + 7] = sin * p.mx + cos * p.my;
}

/** The pieces turned by (cos, sin) and moved by (x, y), as pieces. */
export const placed = (pieces: readonly Piece[], x: number, y: number, cos: number, sin: number): Piece[] =>
  pieces.map((p) => {
    const g = new Float64Array(STRIDE);
    place(p, g, 0, x, y, cos, sin);
    const [ax, ay, bx, by, cx, cy, mx, my] = g as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return { ...p, ax, ay, bx, by, cx, cy, mx, my };
  });

function pointToLine(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
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
  const px = g[k]! + x;
  const py = g[k + 1]! + y;
  const qx = g[k + 2]! + x;
  const qy = g[k + 3]! + y;
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

/** Whether a direction of that length from the centre lies within the sweep of the arc at k. */
const facing = (p: Piece, g: Float64Array, k: number, x: number, y: number, length: number): boolean =>
  x * g[k + 6]! + y * g[k + 7]! >= length * p.cosine;

/**
 * Squared distance of an arc and a segment. The nearest pair is one of: the foot of the centre, an end of the segment
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
    pointToLine(g[k]! + x, g[k + 1]! + y, ax, ay, bx, by),
    pointToLine(g[k + 2]! + x, g[k + 3]! + y, ax, ay, bx, by),
  );
  const cx = g[k + 4]! + x;
  const cy = g[k + 5]! + y;
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
 * Signed gap in millimetres between the piece placed at k, moved by (x, y), and a solid: negative by how far the tool
 * stands in the sheet. Answers `best` when the gap is not below it.
 */
export function gapTo(s: Solid, p: Piece, g: Float64Array, k: number, x: number, y: number, best: number): number {
  const reach = best + p.half;
  if (reach <= 0) return best;
  const r = p.radius;
  const west = (p.arc ? g[k + 4]! - r : Math.min(g[k]!, g[k + 2]!)) + x;
  const east = (p.arc ? g[k + 4]! + r : Math.max(g[k]!, g[k + 2]!)) + x;
  const south = (p.arc ? g[k + 5]! - r : Math.min(g[k + 1]!, g[k + 3]!)) + y;
  const north = (p.arc ? g[k + 5]! + r : Math.max(g[k + 1]!, g[k + 3]!)) + y;
  let least = reach * reach;
  const { xs, ys } = s;
  const n = xs.length;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const ax = xs[j]!;
    const ay = ys[j]!;
    const bx = xs[i]!;
    const by = ys[i]!;
    // Boxes of the edge and the piece further apart than what is known already.
    const h = Math.max(Math.min(ax, bx) - east, west - Math.max(ax, bx), 0);
    const v = Math.max(Math.min(ay, by) - north, south - Math.max(ay, by), 0);
    if (h * h + v * v >= least) continue;
    const square = p.arc ? arcToLine(p, g, k, x, y, ax, ay, bx, by) : lineToLine(g, k, x, y, ax, ay, bx, by);
    if (square < 0) return -p.half - CROSSED;
    if (square < least) least = square;
  }
  if (contains(s, g[k]! + x, g[k + 1]! + y)) return -p.half - CROSSED;
  return least < reach * reach ? Math.sqrt(least) - p.half : best;
}

/** Signed gap between two placed pieces of the sheet, for a part that meets itself. */
export function gapBetween(p: Piece, q: Piece, g: Float64Array, k: number, l: number): number {
  const thick = p.half + q.half;
  if (!p.arc || !q.arc) {
    const line = q.arc ? k : l;
    const [ax, ay, bx, by] = [g[line]!, g[line + 1]!, g[line + 2]!, g[line + 3]!];
    const square = q.arc
      ? arcToLine(q, g, l, 0, 0, ax, ay, bx, by)
      : p.arc
        ? arcToLine(p, g, k, 0, 0, ax, ay, bx, by)
        : lineToLine(g, k, 0, 0, ax, ay, bx, by);
    return square < 0 ? -thick - CROSSED : Math.sqrt(square) - thick;
  }
  // Two rounds meet back to back on the line of centres; elsewhere an end is nearest, and ends belong to straights too.
  const dx = g[l + 4]! - g[k + 4]!;
  const dy = g[l + 5]! - g[k + 5]!;
  const away = Math.sqrt(dx * dx + dy * dy);
  const backToBack = facing(p, g, k, dx, dy, away) && facing(q, g, l, -dx, -dy, away);
  return backToBack ? away - p.radius - q.radius - thick : Infinity;
}

/** Point of a piece at fraction t of its length. */
function along(p: Piece, t: number): [number, number] {
  if (!p.arc) return [p.ax + t * (p.bx - p.ax), p.ay + t * (p.by - p.ay)];
  const half = Math.acos(Math.max(-1, Math.min(1, p.cosine)));
  const middle = Math.atan2(p.my, p.mx);
  const angle = middle + (2 * t - 1) * half;
  return [p.cx + p.radius * Math.cos(angle), p.cy + p.radius * Math.sin(angle)];
}

/**
 * How far, in millimetres, the solid would have to be set back to clear the piece. The depth of a point changes by at
 * most the distance walked, so halving the piece and dropping halves that cannot be deeper finds the deepest point to
 * 0.01 mm. Answers `known` when nothing is deeper.
 */
export function depthIn(s: Solid, p: Piece, known = -Infinity): number {
  const depth = (t: number): number => {
    const [x, y] = along(p, t);
    let least = Infinity;
    for (let i = 0, j = s.xs.length - 1; i < s.xs.length; j = i++)
      least = Math.min(least, pointToLine(x, y, s.xs[j]!, s.ys[j]!, s.xs[i]!, s.ys[i]!));
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
