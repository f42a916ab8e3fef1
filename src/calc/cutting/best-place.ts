/**
 * The place where a piece fits best: beside other parts of a node, or beside a single piece that then becomes a node. Best
 * is where least is wasted across; at a node that must widen, what the others waste by it.
 */
import { missing } from "../../units/certain.ts";
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
// Fitted on generated shop bills and on published bin-packing instances.
/** How often the best place of a layout is passed over, at random. */
const BLINK = 0.01;
/** Share of the places of a layout passed over where the best one is passed over. */
const PASSED_OVER = 0.5;

/** Best places in one layout, an entry for each piece and way round; an entry of another version counts for nothing. */
class KnownPlaces {
  readonly version: Int32Array;
  readonly at: Int32Array;
  readonly score: Float64Array;

  constructor(entries: number) {
    this.version = new Int32Array(entries).fill(-1);
    this.at = new Int32Array(entries);
    this.score = new Float64Array(entries);
  }
}

export class BestPlace {
  private score = Infinity;
  /** Which layout; -1 where no place was found. */
  layout = -1;
  /** Which node or piece of it. */
  at = 0;
  turned = false;
  private known: KnownPlaces[] = [];
  private aside: KnownPlaces[] = [];

  constructor(
    private readonly problem: Problem,
    private readonly random: Random,
    private readonly budget: Budget,
    private readonly blink = BLINK,
  ) {}

  /** So many layouts from now on. */
  start(layouts: number): void {
    if (this.known.length === layouts) return;
    const entries = 2 * this.problem.items.length;
    this.known = Array.from({ length: layouts }, () => new KnownPlaces(entries));
    this.aside = Array.from({ length: layouts }, () => new KnownPlaces(entries));
  }

  /** The layout is about to change: what is known of it is kept for when it is put back. */
  swap(index: number): void {
    const kept = this.known[index] ?? missing();
    this.known[index] = this.aside[index] ?? missing();
    this.aside[index] = kept;
  }

  forget(): void {
    this.layout = -1;
    this.score = Infinity;
  }

  /**
   * Looks for the best place in a layout for a piece of x by y, `item` as in the layout, keeping the best over calls. A
   * layout that has not changed since is not gone through again.
   */
  look(layout: GuillotineLayout, index: number, item: number, x: number, y: number): void {
    if (x > layout.roomX && y > layout.roomY) return;
    const known = this.known[index] ?? missing();
    if (known.version[item] !== layout.version) {
      this.find(layout, x, y, 0);
      known.version[item] = layout.version;
      known.score[item] = this.foundScore;
      known.at[item] = this.foundAt;
    }
    let score = known.score[item] ?? missing();
    if (score >= this.score) return;
    let at = known.at[item] ?? missing();
    if (this.random.unit() < this.blink) {
      this.find(layout, x, y, PASSED_OVER);
      score = this.foundScore;
      at = this.foundAt;
      if (score >= this.score) return;
    }
    this.score = score;
    this.layout = index;
    this.at = at;
    this.turned = (item & 1) === 1;
  }

  private foundScore = 0;
  private foundAt = 0;

  private find(layout: GuillotineLayout, x: number, y: number, passedOver: number): void {
    const d = layout.data;
    const end = layout.slots * STRIDE;
    const stages = this.problem.stages;
    let best = Infinity;
    let bestAt = 0;
    for (let at = 0; at < end; at += STRIDE) {
      const kind = d[at + ITEM] ?? missing();
      if (kind < INTERNAL || (d[at + DEPTH] ?? missing()) >= stages) continue;
      const node = kind === INTERNAL;
      const direction = node
        ? (d[at + DIRECTION] ?? missing())
        : 1 - (d[(d[at + PARENT] ?? missing()) + DIRECTION] ?? missing());
      const across = 1 - direction;
      const a = direction === 0 ? x : y;
      const b = direction === 0 ? y : x;
      const tight = d[at + TIGHT_X + direction] ?? missing();
      if (a + tight > (d[at + CAP_X + direction] ?? missing()) || b > (d[at + CAP_X + across] ?? missing())) continue;
      const width = at === 0 ? (d[CAP_X + across] ?? missing()) : (d[at + TIGHT_X + across] ?? missing());
      const gap = width - b;
      const score = gap >= 0 ? a * gap : -gap * tight;
      if (score < best && !(passedOver > 0 && this.random.unit() < passedOver)) {
        best = score;
        bestAt = at;
      }
    }
    this.budget.spend((end / STRIDE) * WORK_PER_PLACE);
    this.foundScore = best;
    this.foundAt = bestAt;
  }
}
