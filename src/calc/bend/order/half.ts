import { firstOf } from "../../../units/certain.ts";
import { type Chain, posed, roundPiece } from "./chain.ts";
import { type Contact, gaugeContact } from "./gauge.ts";
import type { Piece } from "./piece.ts";
import type { Press, Side } from "./press.ts";
import type { Room } from "./room.ts";
import { flatPose, type Seat } from "./seat.ts";
import { type Rule, type Rules, type Stand, Watch } from "./watch.ts";

/**
 * One side of the sheet at one hit. The two sides meet the tools independently of each other, so each is looked at
 * once for every set of finished bends on its own side, not for every set on both.
 */
export class Half {
  readonly contact: Contact | undefined;
  /** What a contact means at a look, during the stroke, and while the sheet is tipped out. */
  readonly rules: Readonly<Record<"look" | "sweep" | "tilt", Rules>>;
  private flatPieces: Piece[] | undefined;
  private freePieces: Piece[] | undefined;

  constructor(
    readonly chain: Chain,
    readonly seat: Seat,
    readonly thickness: number,
    readonly press: Press,
    readonly side: Side,
    private readonly room: Room,
  ) {
    this.contact =
      side.finger && gaugeContact(posed(chain.pieces, flatPose(seat, thickness)), press.gaugeFrom, press.gaugeTo);
    // Working contact of punch and shoulders: sheet and tool drawings agree to a tenth, less on foil (chosen).
    const touch = Math.min(0.1, thickness / 10);
    // As the sheet starts to turn its lower corner pushes the finger back by up to ((1 - K) t)^2 / (2 stop) (derived, K >= 0.3).
    const fingerTouch = touch + thickness ** 2 / (4 * Math.max(this.contact?.x ?? 1, thickness));
    const rules = (held: Rule, gauged: Rule): Rules => ({
      punch: [touch, touch, "free", "free"],
      ram: ["free", "free", "free", "free"],
      die: [held, held, 0, "free"],
      bed: ["free", "free", "free", "free"],
      finger: ["skip", gauged, fingerTouch, fingerTouch],
    });
    this.rules = { look: rules(touch, fingerTouch), sweep: rules("skip", "skip"), tilt: rules(touch, "skip") };
  }

  watch(clearance: number = this.press.clearance): Watch {
    return new Watch(clearance, this.room);
  }

  /** Pieces of this side with the round bent to half angle a. */
  pieces(a: number): Piece[] {
    if (a === 0 && this.flatPieces) return this.flatPieces;
    if (a === this.seat.free && this.freePieces) return this.freePieces;
    const { seat, thickness, chain } = this;
    const pieces = [
      roundPiece(firstOf(chain.pieces).leg, thickness / 2, seat.zoneLength, a, seat.radius(a)),
      ...chain.pieces,
    ];
    if (a === 0) this.flatPieces = pieces;
    if (a === seat.free) this.freePieces = pieces;
    return pieces;
  }

  /** Punch and ram with the tip at a height. */
  punchAt(y: number): Stand {
    return { solids: this.side.tools.moving, x: 0, y };
  }

  private finger(which: "tool" | "behind" | "below", gone: boolean): Stand[] {
    const { finger } = this.side;
    return finger && this.contact && !gone ? [{ solids: [finger[which]], x: this.contact.x, y: 0 }] : [];
  }

  /** What stands still; `gone` when the finger has drawn back. */
  atRest(gone = false): Stand[] {
    return [{ solids: this.side.tools.fixed, x: 0, y: 0 }, ...this.finger("tool", gone)];
  }

  /** What is passed between here and the front, the ram up. */
  wayOut(gone = false): Stand[] {
    const { behind, above } = this.side;
    const y = this.press.openHeight;
    return [
      { solids: behind.fixed, x: 0, y: 0 },
      { solids: behind.moving, x: 0, y },
      { solids: above, x: 0, y },
      ...this.finger("behind", gone),
    ];
  }

  /** What is passed when the sheet is laid down or lifted. */
  wayUp(gone = false): Stand[] {
    return [{ solids: this.side.below, x: 0, y: 0 }, ...this.finger("below", gone)];
  }
}
