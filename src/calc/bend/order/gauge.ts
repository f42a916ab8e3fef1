import type { Piece } from "./piece.ts";

/** Where a finger whose face covers the heights `from` to `to` meets the sheet as it comes forward from behind. */
export interface Contact {
  readonly x: number;
  /** Above the die's top. */
  readonly y: number;
  readonly leg: number;
  readonly on: "edge" | "flange" | "leaning flange" | "round";
}

/** The furthest point of the placed pieces in the band of heights, or undefined where there is none. */
export function gaugeContact(placed: readonly Piece[], from: number, to: number): Contact | undefined {
  let best: Contact | undefined;
  const offer = (x: number, y: number, piece: Piece, on: Contact["on"]) => {
    // A straight is preferred to the round it is tangent to, an edge to the faces that end there, but for an upright flange:
    // its whole face touches.
    if (best?.on === "flange" && on === "edge" && Math.abs(x - best.x) < 1e-9) return;
    if (y < from - 1e-9 || y > to + 1e-9 || (best && x < best.x + (on === "round" ? 1e-9 : -1e-9))) return;
    best = { x, y, leg: piece.leg, on };
  };
  const line = (ax: number, ay: number, bx: number, by: number, piece: Piece) => {
    const upright = Math.abs(bx - ax) < 1e-3 * Math.abs(by - ay);
    const on = piece.end ? "edge" : upright ? "flange" : "leaning flange";
    offer(ax, ay, piece, on);
    offer(bx, by, piece, on);
    for (const y of [from, to])
      if ((ay - y) * (by - y) < 0) offer(ax + ((bx - ax) * (y - ay)) / (by - ay), y, piece, on);
  };
  for (const p of placed) {
    if (p.arc) {
      for (const r of [p.radius - p.half, p.radius + p.half]) {
        const at = (ux: number, uy: number) => {
          if (ux * p.mx + uy * p.my >= p.cosine - 1e-12) offer(p.cx + r * ux, p.cy + r * uy, p, "round");
        };
        at(1, 0);
        at((p.ax - p.cx) / p.radius, (p.ay - p.cy) / p.radius);
        at((p.bx - p.cx) / p.radius, (p.by - p.cy) / p.radius);
        for (const y of [from, to]) {
          const uy = (y - p.cy) / r;
          if (Math.abs(uy) < 1) at(Math.sqrt(1 - uy * uy), uy);
        }
      }
      continue;
    }
    const length = Math.hypot(p.bx - p.ax, p.by - p.ay);
    const nx = length > 0 ? (-(p.by - p.ay) / length) * p.half : 0;
    const ny = length > 0 ? ((p.bx - p.ax) / length) * p.half : p.half;
    line(p.ax + nx, p.ay + ny, p.bx + nx, p.by + ny, p);
    if (p.half > 0) line(p.ax - nx, p.ay - ny, p.bx - nx, p.by - ny, p);
  }
  return best;
}
