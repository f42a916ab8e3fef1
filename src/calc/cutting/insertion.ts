/**
 * Ruin and recreate on a fixed set of sheets: take a few pieces off, put them and the pieces still waiting back where they
 * fit best, keep the result unless it is clearly worse. The idea of searching for a plan on one sheet fewer while some
 * pieces wait is Gardeyn & Wauters, EJOR 2022, doi 10.1016/j.ejor.2021.11.031 (memory, unverified); ruin and recreate
 * with blinks is Christiaens & Vanden Berghe 2020 (memory, unverified).
 */

import type { Budget } from "./budget.ts";
import {
  CAP_X,
  DEPTH,
  DIRECTION,
  GuillotineLayout,
  INTERNAL,
  ITEM,
  LEAVES,
  PARENT,
  STRIDE,
  TIGHT_X,
} from "./guillotine-layout.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";

export class InsertionSearch {
  layouts: GuillotineLayout[] = [];
  /** Pieces not on any sheet, as item kinds. */
  waiting: number[] = [];
  private saved: GuillotineLayout[] = [];
  private touched: Int32Array;
  private round = 0;
  private readonly area: Float64Array;
  private readonly valuePerArea: number;

  constructor(
    private readonly problem: Problem,
    private readonly random: Random,
    private readonly budget: Budget,
    private readonly blink: number,
    private readonly allowed: ((layout: GuillotineLayout) => boolean) | null,
  ) {
    this.touched = new Int32Array(0);
    this.area = Float64Array.from(problem.items, (item) => item.w * item.h);
    let value = 0;
    let area = 0;
    for (const item of problem.items) {
      value += item.value * item.quantity;
      area += item.w * item.h * item.quantity;
    }
    this.valuePerArea = value / area;
  }

  /** Value of the pieces still waiting. */
  missing(): number {
    let sum = 0;
    for (const item of this.waiting) sum += this.problem.items[item]!.value;
    return sum;
  }

  private bestAt = -1;
  private bestScore = 0;
  private bestItem = 0;

  /** Finds the best place for a piece on one layout, keeping the best over calls. */
  private look(layout: GuillotineLayout, index: number, item: number, x: number, y: number): void {
    const d = layout.data;
    const end = layout.slots * STRIDE;
    const stages = this.problem.stages;
    for (let at = 0; at < end; at += STRIDE) {
      const kind = d[at + ITEM]!;
      if (kind === INTERNAL) {
        if (d[at + DEPTH]! >= stages) continue;
        const direction = d[at + DIRECTION]!;
        const a = direction === 0 ? x : y;
        const b = direction === 0 ? y : x;
        const slack = d[at + CAP_X + direction]! - d[at + TIGHT_X + direction]!;
        if (a > slack) continue;
        const across = 1 - direction;
        if (b > d[at + CAP_X + across]!) continue;
        const width = at === 0 ? d[CAP_X + across]! : d[at + TIGHT_X + across]!;
        const gap = width - b;
        const score = gap >= 0 ? a * gap : -gap * d[at + TIGHT_X + direction]!;
        if (score < this.bestScore && !(this.blink > 0 && this.random.unit() < this.blink)) {
          this.bestScore = score;
          this.bestAt = index * 65536 + at / STRIDE;
          this.bestItem = item;
        }
      } else if (kind >= 0) {
        if (d[at + DEPTH]! >= stages) continue;
        const direction = 1 - d[d[at + PARENT]! + DIRECTION]!;
        const a = direction === 0 ? x : y;
        const b = direction === 0 ? y : x;
        if (a + d[at + TIGHT_X + direction]! > d[at + CAP_X + direction]!) continue;
        const across = 1 - direction;
        if (b > d[at + CAP_X + across]!) continue;
        const gap = d[at + TIGHT_X + across]! - b;
        const score = gap >= 0 ? a * gap : -gap * d[at + TIGHT_X + direction]!;
        if (score < this.bestScore && !(this.blink > 0 && this.random.unit() < this.blink)) {
          this.bestScore = score;
          this.bestAt = index * 65536 + at / STRIDE;
          this.bestItem = item;
        }
      }
    }
    this.budget.spend((end / STRIDE) * WORK_PER_PLACE);
  }

  /** Puts one piece where it fits best; false when it fits nowhere. */
  insert(kind: number, everywhere = true): boolean {
    this.bestAt = -1;
    this.bestScore = Infinity;
    const { w, h } = this.problem.items[kind]!;
    for (let k = 0; k < this.lookedAt; k++) {
      const i = this.lookList[k]!;
      if (!everywhere && this.touched[i] !== this.round) continue;
      const layout = this.layouts[i]!;
      if (layout.w * layout.h - layout.area < this.area[kind]!) continue;
      if (this.problem.plain[layout.sheet]![kind] === 1) this.look(layout, i, kind * 2, w, h);
      if (w !== h && this.problem.turned[layout.sheet]![kind] === 1) this.look(layout, i, kind * 2 + 1, h, w);
    }
    if (this.bestAt < 0) return false;
    const index = Math.floor(this.bestAt / 65536);
    const at = (this.bestAt % 65536) * STRIDE;
    this.touch(index);
    const layout = this.layouts[index]!;
    const turned = (this.bestItem & 1) === 1;
    if (layout.data[at + ITEM] === INTERNAL) layout.addTo(at, this.bestItem, turned ? h : w, turned ? w : h);
    else layout.pairWith(at, this.bestItem, turned ? h : w, turned ? w : h);
    layout.settle();
    return true;
  }

  /** Layouts looked at in this round: all of them on a small bill, otherwise those taken from and a few others. */
  private lookList = new Int32Array(0);
  private lookedAt = 0;

  /** Looks at every layout from now on. */
  lookEverywhere(): void {
    if (this.lookList.length < this.layouts.length) this.lookList = new Int32Array(this.layouts.length * 2);
    this.lookedAt = this.layouts.length;
    for (let i = 0; i < this.lookedAt; i++) this.lookList[i] = i;
  }

  private lookAtFew(): void {
    const all = this.layouts.length;
    if (all <= LOOKED_AT_ONCE) {
      this.lookEverywhere();
      return;
    }
    this.lookedAt = 0;
    for (let i = 0; i < all; i++) if (this.touched[i] === this.round) this.lookList[this.lookedAt++] = i;
    const start = this.random.below(all);
    for (let k = 0; k < all && this.lookedAt < LOOKED_AT_ONCE; k++) {
      const i = (start + k) % all;
      if (this.touched[i] !== this.round) this.lookList[this.lookedAt++] = i;
    }
  }

  private touch(index: number): void {
    if (this.touched[index] === this.round) return;
    this.touched[index] = this.round;
    let copy = this.saved[index];
    if (!copy) {
      copy = new GuillotineLayout();
      this.saved[index] = copy;
    }
    copy.copyFrom(this.layouts[index]!);
  }

  /** Whether every layout changed in this round can still be sheared. */
  private touchedAllowed(): boolean {
    if (!this.allowed) return true;
    for (let i = 0; i < this.layouts.length; i++) {
      if (this.touched[i] === this.round && !this.allowed(this.layouts[i]!)) return false;
    }
    return true;
  }

  private bestMissing = Infinity;
  /** Layouts at the least value missing so far, kept only where that is asked for. */
  bestLayouts: GuillotineLayout[] = [];

  private remember(missing: number): void {
    if (missing >= this.bestMissing) return;
    this.bestMissing = missing;
    this.bestLayouts = this.layouts.map((layout) => {
      const copy = new GuillotineLayout();
      copy.copyFrom(layout);
      return copy;
    });
  }

  /** Runs on and on while little is missing: a run that came close is worth more than a new one. */
  runWhileClose(rounds: number): boolean {
    const all = this.problem.items.reduce((sum, { value, quantity }) => sum + value * quantity, 0);
    for (let run = 0; run < MOST_RUNS; run++) {
      if (this.run(rounds)) return true;
      if (this.budget.over() || this.missing() > CLOSE * all) return false;
    }
    return false;
  }

  /** Runs until nothing waits (true) or the rounds or the budget are spent (false). */
  run(rounds: number, keepBest = false): boolean {
    this.touched = new Int32Array(this.layouts.length).fill(-1);
    this.saved.length = 0;
    this.round = 0;
    this.lookEverywhere();
    const { random, layouts } = this;
    const take = (item: number) => {
      this.waiting.push(item >> 1);
    };
    let current = this.missing();
    let meanArea = 0;
    for (const item of this.problem.items) meanArea += item.value * item.quantity;
    let count = 0;
    for (const item of this.problem.items) count += item.quantity;
    meanArea /= count;
    if (keepBest) this.remember(current);
    let squares = this.spread();
    for (; this.round < rounds; this.round++) {
      if (this.waiting.length === 0) return true;
      if (this.budget.over()) return false;
      const before = this.waiting.slice();
      const waitedBefore = before.length;
      this.ruin(take);
      this.lookAtFew();
      this.order(waitedBefore);
      this.insertWaiting();
      const next = this.missing();
      const nextSquares = this.spread();
      const heat = 0.1 * meanArea * (1 - this.round / rounds);
      const worse = next - current - (nextSquares - squares);
      if (this.touchedAllowed() && (worse <= 0 || random.unit() < Math.exp(-worse / (heat + 1e-9)))) {
        if (keepBest) this.remember(next);
        current = next;
        squares = nextSquares;
      } else {
        for (let i = 0; i < layouts.length; i++) {
          if (this.touched[i] !== this.round) continue;
          const copy = this.saved[i]!;
          this.saved[i] = layouts[i]!;
          layouts[i] = copy;
        }
        this.waiting = before;
      }
    }
    return this.waiting.length === 0;
  }

  /** Uneven filling is worth a little: a sheet with one large hole takes a waiting piece sooner than many with small ones. */
  private spread(): number {
    let sum = 0;
    for (const layout of this.layouts) {
      const free = layout.w * layout.h - layout.area;
      sum += (free / (layout.w * layout.h)) * free;
    }
    return sum * SPREAD * this.valuePerArea;
  }

  private ruin(take: (item: number) => void): void {
    const { random, layouts } = this;
    let wanted = 1 + random.below(7);
    for (let tries = 0; wanted > 0 && tries < 20; tries++) {
      const index = random.below(layouts.length);
      const layout = layouts[index]!;
      const d = layout.data;
      const at = random.below(layout.slots) * STRIDE;
      if (at === 0 || d[at + ITEM]! < INTERNAL) continue;
      const leaves = d[at + ITEM] === INTERNAL ? d[at + LEAVES]! : 1;
      if (leaves > wanted) continue;
      this.touch(index);
      layout.remove(at, take);
      layout.settle();
      wanted -= leaves;
    }
  }

  /** Sorts the waiting pieces, dear ones first but not strictly. */
  private order(waitedBefore: number): void {
    const { random, waiting } = this;
    const { items } = this.problem;
    const count = waiting.length;
    if (this.keys.length < count) {
      this.keys = new Float64Array(count * 2);
      this.fresh = new Uint8Array(count * 2);
    }
    const { keys, fresh } = this;
    const spread = ORDER_SPREAD * random.unit();
    for (let i = 0; i < count; i++) {
      const key = items[waiting[i]!]!.value * (1 + spread * (random.unit() - 0.5));
      const item = waiting[i]!;
      const isFresh = i >= waitedBefore ? 1 : 0;
      let j = i - 1;
      while (j >= 0 && keys[j]! < key) {
        keys[j + 1] = keys[j]!;
        waiting[j + 1] = waiting[j]!;
        fresh[j + 1] = fresh[j]!;
        j--;
      }
      keys[j + 1] = key;
      waiting[j + 1] = item;
      fresh[j + 1] = isFresh;
    }
  }

  /**
   * Tries every waiting piece in turn. One that waited before has been refused by all sheets not touched since, so only
   * pieces just taken off are tried everywhere.
   */
  private insertWaiting(): void {
    const { waiting, fresh } = this;
    let left = 0;
    let refused = -1;
    for (let i = 0; i < waiting.length; i++) {
      const item = waiting[i]!;
      const isFresh = fresh[i] === 1;
      if ((item === refused && !isFresh) || !this.insert(item, isFresh)) {
        waiting[left++] = item;
        if (!isFresh) refused = item;
      }
    }
    waiting.length = left;
  }

  private keys = new Float64Array(64);
  private fresh = new Uint8Array(64);
}
/** How far pieces may change places in the order, as a share of their area. */
const ORDER_SPREAD = 0.3;
/** Runs in a row, and the share of the bill's value that may be missing for one more. */
const MOST_RUNS = 6;
const CLOSE = 0.004;
const SPREAD = 0.1;
const LOOKED_AT_ONCE = 24;
/** Looking at a place takes about as long as filling this many cells of a knapsack. */
const WORK_PER_PLACE = 4;
