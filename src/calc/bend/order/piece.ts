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

/** Writes `from`, turned by (cos, sin) and moved by (x, y), into `to`. */
export function place(from: Piece, to: Piece, x: number, y: number, cos: number, sin: number): void {
  to.ax = x + cos * from.ax - sin * from.ay;
  to.ay = y + sin * from.ax + cos * from.ay;
  to.bx = x + cos * from.bx - sin * from.by;
  to.by = y + sin * from.bx + cos * from.by;
  to.arc = from.arc;
  to.half = from.half;
  to.leg = from.leg;
  to.zone = from.zone;
  to.end = from.end;
  to.arm = from.arm;
  if (!from.arc) return;
  to.radius = from.radius;
  to.cosine = from.cosine;
  to.cx = x + cos * from.cx - sin * from.cy;
  to.cy = y + sin * from.cx + cos * from.cy;
  to.mx = cos * from.mx - sin * from.my;
  to.my = sin * from.mx + cos * from.my;
}

function pointToLine(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  let t = length > 0 ? ((px - ax) * dx + (py - ay) * dy) / length : 0;
  t = t < 0 ? 0 : t > 1 ? 1 : t;
  const x = ax + t * dx - px;
  const y = ay + t * dy - py;
  return x * x + y * y;
}

/** Squared distance of a straight piece and a segment; -1 where they cross. */
function lineToLine(p: Piece, x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const px = p.ax + x;
  const py = p.ay + y;
  const qx = p.bx + x;
  const qy = p.by + y;
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

const facing = (p: Piece, x: number, y: number, length: number): boolean => x * p.mx + y * p.my >= length * p.cosine;

/**
 * Squared distance of an arc and a segment. The nearest pair is one of: the foot of the centre, an end of the segment
 * or an end of the arc; or they cross (derived).
 */
function arcToLine(p: Piece, x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  let best = Math.min(pointToLine(p.ax + x, p.ay + y, ax, ay, bx, by), pointToLine(p.bx + x, p.by + y, ax, ay, bx, by));
  const cx = p.cx + x;
  const cy = p.cy + y;
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  const foot = length > 0 ? ((cx - ax) * dx + (cy - ay) * dy) / length : 0;
  for (const t of [foot < 0 ? 0 : foot > 1 ? 1 : foot, 0, 1]) {
    const ux = ax + t * dx - cx;
    const uy = ay + t * dy - cy;
    const away = Math.sqrt(ux * ux + uy * uy);
    if (facing(p, ux, uy, away)) best = Math.min(best, (away - p.radius) * (away - p.radius));
  }
  const fx = ax + foot * dx - cx;
  const fy = ay + foot * dy - cy;
  const chord = p.radius * p.radius - fx * fx - fy * fy;
  if (chord > 0 && length > 0) {
    const along = Math.sqrt(chord / length);
    for (const t of [foot - along, foot + along])
      if (t >= 0 && t <= 1 && facing(p, ax + t * dx - cx, ay + t * dy - cy, p.radius)) return -1;
  }
  return best;
}

/** Gap reported where the middle line itself is in a tool: surely a collision; `depthIn` says how deep. */
const CROSSED = 0.01;

/**
 * Signed gap in millimetres between a piece moved by (x, y) and a solid: negative by how far the tool stands in the
 * sheet. Answers `best` when the gap is surely not below it.
 */
export function gapTo(s: Solid, p: Piece, x: number, y: number, best: number): number {
  const west = (p.arc ? p.cx - p.radius : Math.min(p.ax, p.bx)) + x;
  const east = (p.arc ? p.cx + p.radius : Math.max(p.ax, p.bx)) + x;
  const south = (p.arc ? p.cy - p.radius : Math.min(p.ay, p.by)) + y;
  const north = (p.arc ? p.cy + p.radius : Math.max(p.ay, p.by)) + y;
  const across = Math.max(s.west - east, west - s.east, 0);
  const up = Math.max(s.south - north, south - s.north, 0);
  const reach = best + p.half;
  if (reach <= 0 || across * across + up * up >= reach * reach) return best;
  let least = reach * reach;
  const { xs, ys } = s;
  const n = xs.length;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const ax = xs[j]!;
    const ay = ys[j]!;
    const bx = xs[i]!;
    const by = ys[i]!;
    // Boxes of the edge and the piece further apart than what is known already.
    const h = Math.max((ax < bx ? ax : bx) - east, west - (ax > bx ? ax : bx), 0);
    const v = Math.max((ay < by ? ay : by) - north, south - (ay > by ? ay : by), 0);
    if (h * h + v * v >= least) continue;
    const square = p.arc ? arcToLine(p, x, y, ax, ay, bx, by) : lineToLine(p, x, y, ax, ay, bx, by);
    if (square < 0) return -p.half - CROSSED;
    if (square < least) least = square;
  }
  if (contains(s, p.ax + x, p.ay + y)) return -p.half - CROSSED;
  return least < reach * reach ? Math.sqrt(least) - p.half : best;
}

/** Signed gap between two pieces of the sheet, for a part that meets itself. */
export function gapBetween(p: Piece, q: Piece): number {
  const thick = p.half + q.half;
  if (!p.arc || !q.arc) {
    const [one, line] = q.arc ? [q, p] : [p, q];
    const square = (one.arc ? arcToLine : lineToLine)(one, 0, 0, line.ax, line.ay, line.bx, line.by);
    return square < 0 ? -thick - CROSSED : Math.sqrt(square) - thick;
  }
  // Two rounds meet back to back on the line of centres; elsewhere an end is nearest, and ends belong to straights too.
  const dx = q.cx - p.cx;
  const dy = q.cy - p.cy;
  const away = Math.sqrt(dx * dx + dy * dy);
  return facing(p, dx, dy, away) && facing(q, -dx, -dy, away) ? away - p.radius - q.radius - thick : Infinity;
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

/** The pieces turned by (cos, sin) and moved by (x, y). */
export function placed(pieces: readonly Piece[], x: number, y: number, cos: number, sin: number): Piece[] {
  return pieces.map((piece) => {
    const there = { ...piece };
    place(piece, there, x, y, cos, sin);
    return there;
  });
}
