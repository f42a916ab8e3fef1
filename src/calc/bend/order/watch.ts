import { type Millimetres, mm } from "../../../units/quantity.ts";
import { depthIn, gapTo, type Piece, place } from "./piece.ts";
import type { Pose } from "./seat.ts";
import type { Solid, ToolName } from "./solid.ts";

export type Phase = "insert" | "gauge" | "close" | "bend" | "lift-off" | "remove";

/** What stands in the way of a hit. */
export interface Obstacle {
  readonly phase: Phase;
  /**
   * The tool that is met; "part" when the sheet meets itself. Limits of the machine count too: "die opening" (the leg
   * does not reach its shoulder), "gauge travel", "ram travel" (stroke too short) and "open height".
   */
  readonly tool: ToolName | "part" | "die opening" | "gauge travel" | "ram travel" | "open height";
  /** Flange number, or the gauge finger itself. */
  readonly leg: number | "finger";
  /** The tool would have to stand back, or the limit to move, by this much. */
  readonly by: Millimetres;
}

export interface Nearest {
  readonly phase: Phase;
  readonly tool: ToolName;
  readonly leg: number;
}

/**
 * What a contact means, by the zone of the piece (see piece.ts): `free` keeps its clearance; a number may touch, and
 * the tool may stand in the sheet by that much (mm); `skip` is not looked at.
 */
export type Rule = "free" | "skip" | number;
export type Rules = Readonly<Record<ToolName, readonly [Rule, Rule, Rule, Rule]>>;

/** Contact is called contact beyond a thousandth; the computed limits of a leg are good to the same (chosen). */
export const CONTACT = 0.001;
/** A motion is cut no finer than this between two looks, mm (chosen). */
const FINEST = 0.004;

/** Solids that stand still, at (0, 0), or have moved to (x, y). */
export interface Stand {
  readonly solids: readonly Solid[];
  readonly x: number;
  readonly y: number;
}

/** Keeps the least gap of one side of the sheet over everything it is shown, up to a stated clearance, and the first collision. */
export class Watch {
  gap: number;
  nearest: Nearest | undefined;
  /** Measured only when asked for: most collisions only close a branch of the search. */
  collision: (() => Obstacle) | undefined;
  private readonly placed: Piece[];
  private strict = 0;
  private resting = 0;

  constructor(
    private readonly pieces: readonly Piece[],
    clearance: number,
  ) {
    this.gap = clearance;
    this.placed = pieces.map((p) => ({ ...p }));
  }

  /** One look at a pose. False after a collision. */
  look(pose: Pose, stands: readonly Stand[], rules: Rules, phase: Phase): boolean {
    if (!this.collision) this.scan(pose, stands, rules, phase, this.gap, 0);
    return !this.collision;
  }

  /**
   * A motion over a parameter from `from` to `to`. No point moves further than `motion(a, b)` between two values, so
   * a stretch whose gap at its middle exceeds that is free; other stretches are halved.
   */
  sweep(
    from: number,
    to: number,
    pose: (a: number) => Pose,
    stands: (a: number) => readonly Stand[],
    motion: (a: number, b: number) => number,
    rules: Rules,
    phase: Phase,
  ): boolean {
    const middle = (from + to) / 2;
    const reach = Math.max(motion(from, middle), motion(middle, to));
    const enough = this.gap + reach;
    if (this.collision) return false;
    this.scan(pose(middle), stands(middle), rules, phase, enough, reach);
    if (this.collision) return false;
    if ((this.strict >= enough && this.resting >= reach) || reach < FINEST) return true;
    return (
      this.sweep(from, middle, pose, stands, motion, rules, phase) &&
      this.sweep(middle, to, pose, stands, motion, rules, phase)
    );
  }

  private scan(
    pose: Pose,
    stands: readonly Stand[],
    rules: Rules,
    phase: Phase,
    enough: number,
    restEnough: number,
  ): void {
    const cos = Math.cos(pose.angle);
    const sin = Math.sin(pose.angle);
    for (let i = 0; i < this.pieces.length; i++) place(this.pieces[i]!, this.placed[i]!, pose.x, pose.y, cos, sin);
    this.strict = enough;
    this.resting = restEnough;
    for (const { solids, x, y } of stands)
      for (const s of solids) {
        const rule = rules[s.tool];
        for (const piece of this.placed) {
          const r = rule[piece.zone];
          if (r === "skip") continue;
          if (r === "free") {
            const gap = gapTo(s, piece, -x, -y, this.strict);
            if (gap >= this.strict) continue;
            this.strict = gap;
            if (gap < this.gap) {
              this.gap = gap;
              this.nearest = { phase, tool: s.tool, leg: piece.leg };
            }
            if (gap < -CONTACT) return this.meet(s, piece, x, y, phase);
          } else {
            const gap = gapTo(s, piece, -x, -y, this.resting - r) + r;
            if (gap < this.resting) this.resting = gap;
            if (gap < -CONTACT) return this.meet(s, piece, x, y, phase);
          }
        }
      }
  }

  private meet(s: Solid, piece: Piece, x: number, y: number, phase: Phase): void {
    const there = { ...piece };
    place(piece, there, -x, -y, 1, 0);
    this.collision = () => ({ phase, tool: s.tool, leg: piece.leg, by: mm(Math.max(0, depthIn(s, there))) });
  }
}
