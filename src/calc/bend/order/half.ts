import { mm } from "../../../units/quantity.ts";
import { type Chain, posed, roundPiece } from "./chain.ts";
import { type Contact, gaugeContact } from "./gauge.ts";
import { type Piece, straightPiece } from "./piece.ts";
import type { Press, Side } from "./press.ts";
import { bentPose, flatPose, type Pose, type Seat, turnedPose } from "./seat.ts";
import { type Obstacle, type Phase, type Rules, type Stand, Watch } from "./watch.ts";

/** The least gap of a phase, up to the clearance asked for, and what is nearest; or what is hit. */
export type Reading = Pick<Watch, "gap" | "nearest" | "collision">;

/** Heights the sheet is carried at, as shares of the room between die and raised punch; tilts on the way out (chosen). */
export const LIFTS = [0, 0.25, 0.5, 0.75, 1] as const;
/** As it came off the punch, this side laid level, the other side laid level. */
export const TILTS = ["as bent", "back level", "front level"] as const;

/**
 * One side of the sheet at one hit. The two sides meet the tools independently of each other, so each is looked at
 * once for every set of finished bends on its own side, not for every set on both.
 */
export class Half {
  readonly contact: Contact | undefined;
  private readonly insertions: Reading[] = [];
  private readonly removals: Reading[] = [];
  private fromFlatToFinished: Reading | undefined;
  private readonly touch: number;
  private readonly fingerTouch: number;

  constructor(
    readonly chain: Chain,
    private readonly seat: Seat,
    private readonly thickness: number,
    private readonly press: Press,
    private readonly side: Side,
  ) {
    const flat = posed(chain.pieces, flatPose(seat, thickness));
    this.contact = side.finger && gaugeContact(flat, press.gaugeFrom, press.gaugeTo);
    // Working contact of punch and shoulders: sheet and tool drawings agree to a tenth, less on foil (chosen).
    this.touch = Math.min(0.1, thickness / 10);
    // As the sheet starts to turn its lower corner pushes the finger back by up to ((1 - K) t)^2 / (2 stop) (derived, K >= 0.3).
    this.fingerTouch = this.touch + thickness ** 2 / (4 * Math.max(this.contact?.x ?? 1, thickness));
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
      const blocked = this.fingerMeetsPunch(this.contact.x);
      if (blocked) return blocked;
    }
    const rules = this.rules("skip");
    const whole = this.watch(0);
    const still = this.atRest();
    whole.look(flatPose(seat, t), still, rules, "gauge") &&
      whole.look(flatPose(seat, t), [{ solids: side.above, x: 0, y: t }], rules, "close");
    if (whole.collision) return whole;
    const formed = this.watch(seat.loaded, whole.gap);
    formed.look(bentPose(seat, t, seat.loaded), [...still, this.punchAt(seat.tip(seat.loaded))], rules, "bend");
    if (formed.collision) return formed;
    const freed = this.watch(seat.free, formed.gap);
    freed.look(
      bentPose(seat, t, seat.free),
      [...still, { solids: side.above, x: 0, y: seat.tip(seat.free) }],
      rules,
      "lift-off",
    );
    if (freed.collision) return freed;
    const swung = new Watch(this.outside(), freed.gap);
    const pose = (a: number) => bentPose(seat, t, a);
    swung.sweep(
      0,
      seat.loaded,
      pose,
      (a) => [...still, this.punchAt(seat.tip(a))],
      this.travel,
      this.rules("sweep"),
      "bend",
    );
    swung.nearest ??= freed.nearest ?? formed.nearest ?? whole.nearest;
    return swung;
  }

  /** Carried in at the k-th lift, over the die and under the open punch, then laid down. */
  insertion(k: number): Reading {
    let known = this.insertions[k];
    if (!known) {
      const { seat, thickness: t, press, side } = this;
      const lift = LIFTS[k]! * (press.openHeight - t);
      const watch = this.watch(0);
      watch.look(flatPose(seat, t, lift), this.wayOut(), this.rules("skip"), "insert") &&
        lift > 0 &&
        watch.look(flatPose(seat, t), this.wayUp(), this.rules("skip"), "insert");
      known = this.insertions[k] = watch;
    }
    return known;
  }

  /** Lifted out of the V, tilted or not, and drawn out to the front. `slope` is this side's, in radians. */
  removal(k: number, tilt: (typeof TILTS)[number]): Reading {
    const index = k * TILTS.length + TILTS.indexOf(tilt);
    let known = this.removals[index];
    if (!known) {
      const { seat, thickness: t, press, side } = this;
      const a = seat.free;
      const own = side.finger ? "back level" : "front level";
      const slope = tilt === "as bent" ? a : tilt === own ? 0 : 2 * a;
      const lift = LIFTS[k]! * (press.openHeight - t);
      const rules = this.rules("skip");
      const watch = this.watch(a);
      const pose = (s: number): Pose => turnedPose(seat, t, a, s, lift);
      if (
        watch.look(pose(slope), this.wayOut(), rules, "remove") &&
        watch.look(bentPose(seat, t, a), this.wayUp(), rules, "remove") &&
        slope !== a
      ) {
        const open = [...this.atRest(), this.punchAt(press.openHeight)];
        const radius = this.chain.radius + (seat.radius(a) + t) * Math.tan(a) + t;
        watch.sweep(
          a,
          slope,
          pose,
          () => open,
          (p, q) => radius * Math.abs(p - q),
          this.rules("tilt"),
          "remove",
        );
      }
      known = this.removals[index] = watch;
    }
    return known;
  }

  /** Pieces of this side with the round bent to half angle a. */
  pieces(a: number): Piece[] {
    const { seat, thickness, chain } = this;
    return [roundPiece(chain.pieces[0]!.leg, thickness / 2, seat.zoneLength, a, seat.radius(a)), ...chain.pieces];
  }

  private watch(a: number, clearance: number = this.press.clearance): Watch {
    return new Watch(this.pieces(a), clearance);
  }

  /** Pieces without what stays between the die's shoulders, where punch and die hold the sheet all through the stroke. */
  private outside(): Piece[] {
    const from = this.seat.restsAt(0) + this.press.shoulderRadius + this.thickness - this.seat.zoneLength / 2;
    return this.chain.pieces.flatMap((p) => {
      if (p.zone !== 1 || Math.min(p.ax, p.bx) >= from) return [p];
      return p.bx <= from ? [] : [{ ...p, ax: from }];
    });
  }

  private readonly travel = (a: number, b: number): number => {
    const [p, q] = [bentPose(this.seat, this.thickness, a), bentPose(this.seat, this.thickness, b)];
    const turned = (this.chain.radius + this.thickness) * Math.abs(a - b);
    return turned + Math.abs(p.x - q.x) + Math.abs(p.y - q.y) + Math.abs(this.seat.tip(a) - this.seat.tip(b));
  };

  private punchAt(y: number): Stand {
    return { solids: this.side.tools.moving, x: 0, y };
  }

  private finger(which: "tool" | "behind" | "below"): Stand[] {
    const { finger } = this.side;
    return finger && this.contact ? [{ solids: [finger[which]], x: this.contact.x, y: 0 }] : [];
  }

  private atRest(): Stand[] {
    return [{ solids: this.side.tools.fixed, x: 0, y: 0 }, ...this.finger("tool")];
  }

  private wayOut(): Stand[] {
    const { behind, above } = this.side;
    const y = this.press.openHeight;
    return [
      { solids: behind.fixed, x: 0, y: 0 },
      { solids: behind.moving, x: 0, y },
      { solids: above, x: 0, y },
      ...this.finger("behind"),
    ];
  }

  private wayUp(): Stand[] {
    return [{ solids: this.side.below, x: 0, y: 0 }, ...this.finger("below")];
  }

  private rules(when: "skip" | "sweep" | "tilt"): Rules {
    const { touch, fingerTouch } = this;
    const held = when === "skip" ? touch : "skip";
    const gauged = when === "skip" ? fingerTouch : "skip";
    return {
      punch: [touch, touch, "free", "free"],
      ram: ["free", "free", "free", "free"],
      die: [when === "tilt" ? touch : held, when === "tilt" ? touch : held, 0, "free"],
      bed: ["free", "free", "free", "free"],
      finger: ["skip", gauged, fingerTouch, fingerTouch],
    };
  }

  private stopped(phase: Phase, tool: Obstacle["tool"], by: number): Reading {
    const leg = this.chain.pieces[0]!.leg;
    return { gap: -by, nearest: undefined, collision: () => ({ phase, tool, leg, by: mm(by) }) };
  }

  private fingerMeetsPunch(stop: number): Reading | undefined {
    const { finger } = this.press;
    const edges = finger.map((p, i) => straightPiece(0, 3, 0, p, finger[(i + 1) % finger.length]!));
    const watch = new Watch(edges, 0);
    const free = this.rules("skip");
    watch.look(
      { x: stop, y: 0, angle: 0 },
      [{ solids: this.side.above, x: 0, y: this.seat.tip(this.seat.loaded) }],
      free,
      "bend",
    );
    const { collision } = watch;
    return collision && { gap: watch.gap, nearest: undefined, collision: () => ({ ...collision(), leg: "finger" }) };
  }
}
