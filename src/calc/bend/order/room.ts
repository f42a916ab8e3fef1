import { missing } from "../../../units/certain.ts";
import { type Piece, place, STRIDE } from "./piece.ts";
import type { Pose } from "./seat.ts";
import type { Solid } from "./solid.ts";

/** A strip of ten bends has fewer; a finger outline may have 200 edges. */
const MOST = 200;

/** Scratch for pieces laid out in a pose with the boxes around them, so that looking at a pose allocates nothing. */
export class Room {
  /** Piece i stands at i x STRIDE (see `place`). */
  readonly layout = new Float64Array(STRIDE * MOST);
  /** Four figures a piece: least x, greatest x, least y, greatest y, of the middle line thickened. */
  private readonly boxes = new Float64Array(4 * MOST);

  lay(pieces: readonly Piece[], pose: Pose): void {
    const cos = Math.cos(pose.angle);
    const sin = Math.sin(pose.angle);
    const g = this.layout;
    for (let i = 0; i < pieces.length; i++) {
      const p = pieces[i] ?? missing();
      const k = STRIDE * i;
      place(p, g, k, pose.x, pose.y, cos, sin);
      this.box(p, k, 4 * i);
    }
  }

  private box(p: Piece, k: number, to: number): void {
    const { boxes, layout: g } = this;
    const out = p.arc ? p.radius + p.half : p.half;
    // An arc is boxed by its whole circle, from the center, a straight from its ends.
    const from = p.arc ? k + 4 : k;
    const until = p.arc ? k + 4 : k + 2;
    const ax = g[from] ?? missing();
    const ay = g[from + 1] ?? missing();
    const bx = g[until] ?? missing();
    const by = g[until + 1] ?? missing();
    boxes[to] = Math.min(ax, bx) - out;
    boxes[to + 1] = Math.max(ax, bx) + out;
    boxes[to + 2] = Math.min(ay, by) - out;
    boxes[to + 3] = Math.max(ay, by) + out;
  }

  /** Surely at least `gap` between piece i and a solid moved to (x, y). */
  clearOf(i: number, s: Solid, x: number, y: number, gap: number): boolean {
    const { boxes } = this;
    const k = 4 * i;
    return (
      s.west + x - (boxes[k + 1] ?? missing()) >= gap ||
      (boxes[k] ?? missing()) - s.east - x >= gap ||
      s.south + y - (boxes[k + 3] ?? missing()) >= gap ||
      (boxes[k + 2] ?? missing()) - s.north - y >= gap
    );
  }
}
