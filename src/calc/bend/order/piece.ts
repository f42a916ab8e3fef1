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
  /** Arcs: center, radius, unit vector from the center to the middle, cosine of half the sweep. */
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
  [a, b]: readonly [readonly [number, number], readonly [number, number]],
  end = false,
): Piece {
  const line = { ax: a[0], ay: a[1], bx: b[0], by: b[1] };
  const arm = Math.max(Math.hypot(...a), Math.hypot(...b)) + half;
  return { arc: false, half, leg, zone, end, arm, ...line, cx: 0, cy: 0, radius: 0, mx: 0, my: 0, cosine: 0 };
}

/** From angle `from` through `sweep` (radians, signed) about a center. */
interface Arc {
  readonly center: readonly [number, number];
  readonly radius: number;
  readonly from: number;
  readonly sweep: number;
}

export function arcPiece(leg: number, zone: Zone, half: number, { center, radius, from, sweep }: Arc): Piece {
  const [cx, cy] = center;
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
