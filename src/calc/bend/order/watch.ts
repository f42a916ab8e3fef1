import { missing } from "../../../units/certain.ts";
import { type Millimeters, mm } from "../../../units/quantity.ts";
import { depthIn } from "./depth.ts";
import { gapTo } from "./distance.ts";
import { type Piece, placed, STRIDE } from "./piece.ts";
import type { Room } from "./room.ts";
import type { Pose } from "./seat.ts";
import type { Solid, ToolName } from "./solid.ts";

export type Phase = "insert" | "gauge" | "close" | "bend" | "lift-off" | "remove";

/** What stands in the way of a hit. */
export interface Obstacle {
  readonly phase: Phase;
  /**
   * The tool that is met. Limits of the machine count too: "die opening" (the leg does not reach its shoulder),
   * "gauge travel", "ram travel" (stroke too short) and "open height".
   */
  readonly tool: ToolName | "die opening" | "gauge travel" | "ram travel" | "open height";
  /** Flange number, or the gauge finger itself; the flange before the bend where no flange is to blame. */
  readonly leg: number | "finger";
  /** The tool would have to stand back, or the limit to move, by this much. */
  readonly by: Millimeters;
}

/** Which part of the work is in the way: "flange 2" or "the gauge finger". */
export const legInWords = ({ leg }: Pick<Obstacle, "leg">): string =>
  leg === "finger" ? "the gauge finger" : `flange ${leg}`;

/** What stands in the way, as a sentence goes on: limits of the machine are not met but fallen short of. */
export function obstacleInWords(obstacle: Pick<Obstacle, "leg" | "tool">): string {
  switch (obstacle.tool) {
    case "die opening":
      return `${legInWords(obstacle)} does not reach the die's shoulder`;
    case "gauge travel":
      return "the back gauge does not reach the stop";
    case "ram travel":
      return "the stroke of the ram is too short";
    case "open height":
      return "the brake does not open far enough";
    default:
      return `${legInWords(obstacle)} meets the ${obstacle.tool}`;
  }
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

/** A tool stands in the sheet beyond this, mm; small because a corner enters a round at a grazing angle (chosen). */
export const CONTACT = 1e-5;
/** A motion is cut no finer than this between two looks, mm (chosen). */
const FINEST = 0.004;

/** Solids that stand still, at (0, 0), or have moved to (x, y). */
export interface Stand {
  readonly solids: readonly Solid[];
  readonly x: number;
  readonly y: number;
}

/** The least gap of a phase, up to the clearance asked for, and what is nearest; or what is hit. */
export interface Reading {
  readonly gap: number;
  readonly nearest: Nearest | undefined;
  readonly collision: (() => Obstacle) | undefined;
}

/** A motion of the sheet against the tools over the angle of its chain, radians. */
export interface Motion {
  readonly pose: (at: number) => Pose;
  readonly stands: (at: number) => readonly Stand[];
  readonly shift: (a: number, b: number) => number;
  /** Longest arm of the pieces that move. */
  readonly arm: number;
}

/** Keeps the least gap of one side of the sheet over everything it is shown, up to a stated clearance, and the first collision. */
export class Watch implements Reading {
  nearest: Nearest | undefined;
  /** Measured only when asked for: most collisions only close a branch of the search. */
  collision: (() => Obstacle) | undefined;

  /** @param room scratch, shared by watches that take turns. */
  constructor(
    public gap: number,
    private readonly room: Room,
  ) {}

  /** One look at a pose. False after a collision. */
  look(pieces: readonly Piece[], pose: Pose, stands: readonly Stand[], rules: Rules, phase: Phase): boolean {
    if (!this.collision) this.scan(pieces, pose, stands, rules, phase, 0, 0);
    return !this.collision;
  }

  /**
   * A motion from `from` to `to`. Between two values the chain turns by their difference (radians) and its origin moves
   * against any tool by no more than `shift`; so a stretch whose gaps at its middle exceed what its pieces can move is
   * free, and other stretches are halved.
   */
  sweep(pieces: readonly Piece[], from: number, to: number, motion: Motion, rules: Rules, phase: Phase): boolean {
    if (this.collision) return false;
    const middle = (from + to) / 2;
    const shift = Math.max(motion.shift(from, middle), motion.shift(middle, to));
    const turn = Math.abs(to - from) / 2;
    const free = this.scan(pieces, motion.pose(middle), motion.stands(middle), rules, phase, shift, turn);
    if (this.collision) return false;
    if (free || shift + turn * motion.arm < FINEST) return true;
    return (
      this.sweep(pieces, from, middle, motion, rules, phase) && this.sweep(pieces, middle, to, motion, rules, phase)
    );
  }

  /** @returns whether every piece stays free when it moves by `shift` and turns by `turn` from here. */
  private scan(
    pieces: readonly Piece[],
    pose: Pose,
    stands: readonly Stand[],
    rules: Rules,
    phase: Phase,
    shift: number,
    turn: number,
  ): boolean {
    const { room } = this;
    room.lay(pieces, pose);
    let free = true;
    for (const { solids, x, y } of stands)
      for (const s of solids) {
        const rule = rules[s.tool];
        for (let i = 0; i < pieces.length; i++) {
          const piece = pieces[i] ?? missing();
          const r = rule[piece.zone];
          if (r === "skip") continue;
          const keep = r === "free" ? this.gap : -r;
          const enough = keep + shift + turn * piece.arm;
          if (room.clearOf(i, s, x, y, enough)) continue;
          const gap = gapTo(s, piece, room.layout, i * STRIDE, -x, -y, enough);
          if (gap >= enough) continue;
          free = false;
          if (gap < (r === "free" ? 0 : -r) - CONTACT) {
            this.collision = once(() => deepest(posedAgainst(pieces, pose, x, y), s, rule, phase));
            return false;
          }
          if (r !== "free" || gap >= this.gap) continue;
          this.gap = gap;
          this.nearest = { phase, tool: s.tool, leg: piece.leg };
        }
      }
    return free;
  }
}

const posedAgainst = (pieces: readonly Piece[], { x, y, angle }: Pose, toolX: number, toolY: number): Piece[] =>
  placed(pieces, x - toolX, y - toolY, Math.cos(angle), Math.sin(angle));

/** Names the flange that is deepest in the tool. */
function deepest(pieces: readonly Piece[], s: Solid, rule: Rules[ToolName], phase: Phase): Obstacle {
  let found = { leg: 0, by: -Infinity };
  for (const piece of pieces) {
    if (rule[piece.zone] === "skip") continue;
    const by = depthIn(s, piece, found.by);
    if (by > found.by) found = { leg: piece.leg, by };
  }
  return { phase, tool: s.tool, leg: found.leg, by: mm(Math.max(0, found.by)) };
}

function once<T>(compute: () => T): () => T {
  let known: T | undefined;
  return () => {
    known ??= compute();
    return known;
  };
}
