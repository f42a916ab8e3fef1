import { mm } from "../../../units/quantity.ts";
import { type Chain, posed, roundPiece } from "./chain.ts";
import { type Contact, gaugeContact } from "./gauge.ts";
import { type Piece, straightPiece } from "./piece.ts";
import type { Press, Side } from "./press.ts";
import type { Room } from "./room.ts";
import { bentPose, flatPose, type Pose, type Seat, turnedPose } from "./seat.ts";
import { type Motion, type Obstacle, type Phase, type Rule, type Rules, type Stand, Watch } from "./watch.ts";

/** The least gap of a phase, up to the clearance asked for, and what is nearest; or what is hit. */
export type Reading = Pick<Watch, "gap" | "nearest" | "collision">;

/** Heights the sheet is carried at, as shares of the room between die and raised punch (chosen). */
const LIFTS = [0, 0.25, 0.5, 0.75, 1] as const;
/**
 * Ways in: over the die at a lift and laid down in place, or laid down short of the gauge and pushed back to it, so
 * that a flange which hangs under the finger can get there. The last figure is how short, mm (chosen).
 */
export const WAYS_IN = [0, 10]
  .flatMap((short) => LIFTS.map((lift) => ({ lift, short })))
  .filter((w) => w.lift || !w.short);
/** Ways out: lifted, and as it came off the punch, or with the back or the front laid level. */
export const WAYS_OUT = (["as bent", "back level", "front level"] as const).flatMap((tilt) =>
  LIFTS.map((lift) => ({ lift, tilt })),
);

/**
 * One side of the sheet at one hit. The two sides meet the tools independently of each other, so each is looked at
 * once for every set of finished bends on its own side, not for every set on both.
 */
export class Half {
  readonly contact: Contact | undefined;
  private readonly insertions: Reading[] = [];
  private readonly removals: Reading[] = [];
  private fromFlatToFinished: Reading | undefined;
  /** What a contact means at a look, during the stroke, and while the sheet is tipped out. */
  private readonly rules: Readonly<Record<"look" | "sweep" | "tilt", Rules>>;
  private flatPieces: Piece[] | undefined;
  private freePieces: Piece[] | undefined;

  constructor(
    readonly chain: Chain,
    private readonly seat: Seat,
    private readonly thickness: number,
    private readonly press: Press,
    private readonly side: Side,
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

  /** Gauging, closing, bending under load, springing back, the punch leaving. */
  mandatory(): Reading {
    this.fromFlatToFinished ??= this.bendIt();
    return this.fromFlatToFinished;
  }

  private bendIt(): Reading {
    const { seat, thickness: t, side, press, chain } = this;
    const short = seat.restsAt(seat.loaded) - (seat.radius(seat.loaded) + t / 2) * Math.tan(seat.loaded) - chain.run;
    if (short > 1e-9) return this.stopped("bend", "die opening", short);
    if (side.finger) {
      if (!this.contact) return this.stopped("gauge", "finger", Math.max(press.gaugeFrom - t, -press.gaugeTo));
      const off = Math.max(press.nearestStop - this.contact.x, this.contact.x - press.furthestStop);
      if (off > 1e-9) return this.stopped("gauge", "gauge travel", off);
      const blocked = press.fingerRetracts ? undefined : this.fingerMeetsPunch(this.contact.x);
      if (blocked) return blocked;
    }
    const rules = this.rules.look;
    const watch = new Watch(press.clearance, this.room);
    const still = this.atRest(press.fingerRetracts);
    const flat = this.pieces(0);
    const stroke: Motion = {
      pose: (a) => bentPose(seat, t, a),
      stands: (a) => [...still, this.punchAt(seat.tip(a))],
      shift: this.originShift,
      arm: chain.radius,
    };
    const { free, loaded } = seat;
    // The end of the stroke before the stroke itself: most collisions show there already, at their worst.
    watch.look(flat, flatPose(seat, t), this.atRest(), rules, "gauge") &&
      watch.look(flat, flatPose(seat, t), [{ solids: side.above, x: 0, y: t }], rules, "close") &&
      watch.look(this.pieces(loaded), stroke.pose(loaded), stroke.stands(loaded), rules, "bend") &&
      watch.look(
        this.pieces(free),
        stroke.pose(free),
        [...still, { solids: side.above, x: 0, y: seat.tip(free) }],
        rules,
        "lift-off",
      ) &&
      watch.sweep(this.outside(), 0, loaded, stroke, this.rules.sweep, "bend");
    return watch;
  }

  /** Carried in over the die and under the open punch, laid down and pushed to the gauge. */
  insertion(way: number): Reading {
    let known = this.insertions[way];
    if (!known) {
      const { seat, thickness: t, press } = this;
      const { lift, short } = WAYS_IN[way]!;
      const watch = new Watch(press.clearance, this.room);
      const pieces = this.pieces(0);
      const rules = this.rules.look;
      const pose = (back: number, up: number): Pose => {
        const there = flatPose(seat, t, up * (press.openHeight - t));
        return { ...there, x: there.x + (this.side.finger ? -back : back) };
      };
      watch.look(pieces, pose(short, lift), this.wayOut(), rules, "insert") &&
        lift > 0 &&
        watch.look(pieces, pose(short, 0), this.wayUp(), rules, "insert");
      // The push is short: the die is nearest at one of its ends, anything else is thicker than these steps.
      for (let back = short - 2.5; back > 0; back -= 2.5)
        watch.look(pieces, pose(back, 0), this.atRest(), rules, "insert");
      known = this.insertions[way] = watch;
    }
    return known;
  }

  /** Lifted out of the V, tilted or not, and drawn out to the front. */
  removal(way: number): Reading {
    let known = this.removals[way];
    if (!known) {
      const { seat, thickness: t, press, side } = this;
      const a = seat.free;
      const gone = press.fingerRetracts;
      const { lift, tilt } = WAYS_OUT[way]!;
      const own = side.finger ? "back level" : "front level";
      const slope = tilt === "as bent" ? a : tilt === own ? 0 : 2 * a;
      const rules = this.rules.look;
      const watch = new Watch(press.clearance, this.room);
      const pieces = this.pieces(a);
      const pose = (s: number): Pose => turnedPose(seat, t, a, s, lift * (press.openHeight - t));
      if (
        watch.look(pieces, pose(slope), this.wayOut(gone), rules, "remove") &&
        watch.look(pieces, bentPose(seat, t, a), this.wayUp(gone), rules, "remove") &&
        slope !== a
      ) {
        const open = [...this.atRest(gone), this.punchAt(press.openHeight)];
        const offset = (seat.radius(a) + t) * Math.tan(a) + t;
        const tipping: Motion = {
          pose,
          stands: () => open,
          shift: (p, q) => offset * Math.abs(p - q),
          arm: this.chain.radius,
        };
        watch.sweep(pieces, a, slope, tipping, this.rules.tilt, "remove");
      }
      known = this.removals[way] = watch;
    }
    return known;
  }

  /** Pieces of this side with the round bent to half angle a. */
  private pieces(a: number): Piece[] {
    if (a === 0 && this.flatPieces) return this.flatPieces;
    if (a === this.seat.free && this.freePieces) return this.freePieces;
    const { seat, thickness, chain } = this;
    const pieces = [
      roundPiece(chain.pieces[0]!.leg, thickness / 2, seat.zoneLength, a, seat.radius(a)),
      ...chain.pieces,
    ];
    if (a === 0) this.flatPieces = pieces;
    if (a === seat.free) this.freePieces = pieces;
    return pieces;
  }

  /** Pieces without what stays between the die's shoulders, where punch and die hold the sheet all through the stroke. */
  private outside(): Piece[] {
    const from = this.seat.restsAt(0) + this.press.shoulderRadius + this.thickness - this.seat.zoneLength / 2;
    return this.chain.pieces.flatMap((p) => {
      if (p.zone !== 1 || Math.min(p.ax, p.bx) >= from) return [p];
      return p.bx <= from ? [] : [{ ...p, ax: from }];
    });
  }

  private readonly originShift = (a: number, b: number): number => {
    const [p, q] = [bentPose(this.seat, this.thickness, a), bentPose(this.seat, this.thickness, b)];
    // The path of the origin bends a little: a thickness times the angle covers its bulge between two values.
    const bulge = this.thickness * Math.abs(a - b);
    return bulge + Math.abs(p.x - q.x) + Math.abs(p.y - q.y) + Math.abs(this.seat.tip(a) - this.seat.tip(b));
  };

  private punchAt(y: number): Stand {
    return { solids: this.side.tools.moving, x: 0, y };
  }

  private finger(which: "tool" | "behind" | "below", gone: boolean): Stand[] {
    const { finger } = this.side;
    return finger && this.contact && !gone ? [{ solids: [finger[which]], x: this.contact.x, y: 0 }] : [];
  }

  private atRest(gone = false): Stand[] {
    return [{ solids: this.side.tools.fixed, x: 0, y: 0 }, ...this.finger("tool", gone)];
  }

  private wayOut(gone = false): Stand[] {
    const { behind, above } = this.side;
    const y = this.press.openHeight;
    return [
      { solids: behind.fixed, x: 0, y: 0 },
      { solids: behind.moving, x: 0, y },
      { solids: above, x: 0, y },
      ...this.finger("behind", gone),
    ];
  }

  private wayUp(gone = false): Stand[] {
    return [{ solids: this.side.below, x: 0, y: 0 }, ...this.finger("below", gone)];
  }

  private stopped(phase: Phase, tool: Obstacle["tool"], by: number): Reading {
    const leg = this.chain.pieces[0]!.leg;
    return { gap: -by, nearest: undefined, collision: () => ({ phase, tool, leg, by: mm(by) }) };
  }

  private fingerMeetsPunch(stop: number): Reading | undefined {
    const { finger } = this.press;
    const edges = finger.map((p, i) => straightPiece(0, 3, 0, p, finger[(i + 1) % finger.length]!));
    const watch = new Watch(0, this.room);
    const free = this.rules.look;
    watch.look(
      edges,
      { x: stop, y: 0, angle: 0 },
      [{ solids: this.side.above, x: 0, y: this.seat.tip(this.seat.loaded) }],
      free,
      "bend",
    );
    const { collision } = watch;
    return collision && { gap: watch.gap, nearest: undefined, collision: () => ({ ...collision(), leg: "finger" }) };
  }
}
