/**
 * The place where a piece fits best: beside other parts of a node, or beside a single piece that then becomes a node. Best
 * is where least is wasted across; at a node that must widen, what the others waste by it.
 */
import type { Budget } from "./budget.ts";
import {
  CAP_X,
  DEPTH,
  DIRECTION,
  type GuillotineLayout,
  INTERNAL,
  ITEM,
  PARENT,
  STRIDE,
  TIGHT_X,
} from "./guillotine-layout.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";

/** Looking at a place takes about as long as filling this many cells of a knapsack. */
const WORK_PER_PLACE = 4;

export class BestPlace {
  private score = Infinity;
  /** Which layout; -1 where no place was found. */
  layout = -1;
  /** Which node or piece of it. */
  at = 0;
  turned = false;

  constructor(
    private readonly problem: Problem,
    private readonly random: Random,
    private readonly budget: Budget,
    /** Share of places passed over at random. */
    private readonly blink: number,
  ) {}

  forget(): void {
    this.layout = -1;
    this.score = Infinity;
  }

  /** Looks at every place of a layout for a piece of x by y, keeping the best over calls. */
  look(layout: GuillotineLayout, index: number, turned: boolean, x: number, y: number): void {
    const d = layout.data;
    const end = layout.slots * STRIDE;
    const stages = this.problem.stages;
    for (let at = 0; at < end; at += STRIDE) {
      const kind = d[at + ITEM]!;
      if (kind < INTERNAL || d[at + DEPTH]! >= stages) continue;
      const node = kind === INTERNAL;
      const direction = node ? d[at + DIRECTION]! : 1 - d[d[at + PARENT]! + DIRECTION]!;
      const across = 1 - direction;
      const a = direction === 0 ? x : y;
      const b = direction === 0 ? y : x;
      const tight = d[at + TIGHT_X + direction]!;
      if (a + tight > d[at + CAP_X + direction]! || b > d[at + CAP_X + across]!) continue;
      const width = at === 0 ? d[CAP_X + across]! : d[at + TIGHT_X + across]!;
      const gap = width - b;
      const score = gap >= 0 ? a * gap : -gap * tight;
      if (score < this.score && !(this.blink > 0 && this.random.unit() < this.blink)) {
        this.score = score;
        this.layout = index;
        this.at = at;
        this.turned = turned;
      }
    }
    this.budget.spend((end / STRIDE) * WORK_PER_PLACE);
  }
}
