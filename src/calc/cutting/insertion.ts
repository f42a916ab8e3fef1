/**
 * Ruin and recreate on a fixed set of sheets: take a few pieces off, put them and the pieces still waiting back where they
 * fit best, keep the result unless it is clearly worse. The idea of searching for a plan on one sheet fewer while some
 * pieces wait is Gardeyn & Wauters, EJOR 2022, doi 10.1016/j.ejor.2021.11.031 (memory, unverified); ruin and recreate
 * with blinks is Christiaens & Vanden Berghe 2020 (memory, unverified).
 */
import { missing } from "../../units/certain.ts";
import { BestPlace } from "./best-place.ts";
import type { Budget } from "./budget.ts";
import { GuillotineLayout, INTERNAL, ITEM, LEAVES, STRIDE } from "./guillotine-layout.ts";
import type { Harvest } from "./harvest.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";
import { WaitingPieces } from "./waiting-pieces.ts";

// The figures below are fitted on generated shop bills and on published cutting-stock and bin-packing instances.
/** Pieces taken off in one round, and parts tried for it. */
const MOST_TAKEN = 7;
const MOST_TRIES = 20;
/** Runs in a row, and the share of the bill's value that may be missing for one more. */
const MOST_RUNS = 6;
const CLOSE = 0.004;
/** What uneven filling is worth, as a share of the area it frees. */
const SPREAD = 0.1;
/** Sheets looked at for one piece on a large bill, and the work of passing one by. */
const LOOKED_AT_ONCE = 24;
const WORK_PER_LAYOUT = 1;

export class InsertionSearch {
  layouts: GuillotineLayout[] = [];
  readonly waiting: WaitingPieces;
  private readonly place: BestPlace;
  private saved: GuillotineLayout[] = [];
  private touched: Int32Array;
  private round = 0;
  private readonly area: Float64Array;
  private readonly valuePerArea: number;

  constructor(
    private readonly problem: Problem,
    private readonly random: Random,
    private readonly budget: Budget,
    private readonly allowed: ((layout: GuillotineLayout) => boolean) | null,
    private readonly harvest: Harvest | null,
  ) {
    this.waiting = new WaitingPieces(problem, random);
    this.place = new BestPlace(problem, random, budget);
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

  /** Puts one piece where it fits best; false when it fits nowhere. */
  insert(kind: number, everywhere = true): boolean {
    const { place } = this;
    place.forget();
    const { w, h } = this.problem.items[kind] ?? missing();
    const list = everywhere ? this.lookList : this.changed;
    const length = everywhere ? this.lookedAt : this.changes;
    for (let k = 0; k < length; k++) {
      const i = list[k] ?? missing();
      const layout = this.layouts[i] ?? missing();
      if (layout.w * layout.h - layout.area < (this.area[kind] ?? missing())) continue;
      if ((this.problem.plain[layout.sheet] ?? missing())[kind] === 1) place.look(layout, i, 2 * kind, w, h);
      if (w !== h && (this.problem.turned[layout.sheet] ?? missing())[kind] === 1)
        place.look(layout, i, 2 * kind + 1, h, w);
    }
    this.budget.spend(length * WORK_PER_LAYOUT);
    if (place.layout < 0) return false;
    const { at, turned } = place;
    this.touch(place.layout);
    const layout = this.layouts[place.layout] ?? missing();
    const item = kind * 2 + (turned ? 1 : 0);
    const [x, y] = turned ? [h, w] : [w, h];
    if (layout.data[at + ITEM] === INTERNAL) layout.addTo(at, item, x, y);
    else layout.pairWith(at, item, x, y);
    this.settle(layout);
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
    copy.copyFrom(this.layouts[index] ?? missing());
    this.place.swap(index);
    this.changed[this.changes++] = index;
  }

  private versions = 0;
  private settle(layout: GuillotineLayout): void {
    layout.settle();
    layout.version = ++this.versions;
  }

  /** The layouts touched in this round. */
  private changed = new Int32Array(0);
  private changes = 0;

  /** Whether every layout changed in this round can still be sheared. */
  private touchedAllowed(): boolean {
    if (!this.allowed) return true;
    for (let n = 0; n < this.changes; n++) {
      const i = this.changed[n] ?? missing();
      if (!this.allowed(this.layouts[i] ?? missing())) return false;
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
      if (this.budget.over() || this.waiting.value > CLOSE * all) return false;
    }
    return false;
  }

  /** Runs until nothing waits (true) or the rounds or the budget are spent (false). */
  run(rounds: number, keepBest = false): boolean {
    this.touched = new Int32Array(this.layouts.length).fill(-1);
    this.saved.length = 0;
    this.changed = new Int32Array(this.layouts.length);
    for (const layout of this.layouts) layout.version = ++this.versions;
    this.place.start(this.layouts.length);
    this.round = 0;
    this.lookEverywhere();
    const { random, layouts } = this;
    const take = (item: number) => {
      this.waiting.kinds.push(item >> 1);
    };
    let current = this.waiting.value;
    let meanArea = 0;
    for (const item of this.problem.items) meanArea += item.value * item.quantity;
    let count = 0;
    for (const item of this.problem.items) count += item.quantity;
    meanArea /= count;
    if (keepBest) this.remember(current);
    for (; this.round < rounds; this.round++) {
      if (this.waiting.kinds.length === 0) return true;
      if (this.budget.over()) return false;
      const before = this.waiting.kinds.slice();
      this.changes = 0;
      // At first nothing has been refused by any sheet: one put there just now is empty.
      const waitedBefore = this.round === 0 ? 0 : before.length;
      this.ruin(take);
      this.lookAtFew();
      this.waiting.sort(waitedBefore);
      this.waiting.insertAll((item, everywhere) => this.insert(item, everywhere));
      const next = this.waiting.value;
      const heat = 0.1 * meanArea * (1 - this.round / rounds);
      const worse = next - current - this.moreSpread();
      if (this.touchedAllowed() && (worse <= 0 || random.unit() < Math.exp(-worse / (heat + 1e-9)))) {
        if (keepBest) this.remember(next);
        for (let n = 0; this.harvest && n < this.changes; n++)
          this.harvest.take(layouts[this.changed[n] ?? missing()] ?? missing());
        current = next;
      } else {
        for (let n = 0; n < this.changes; n++) {
          const i = this.changed[n] ?? missing();
          this.place.swap(i);
          const copy = this.saved[i] ?? missing();
          this.saved[i] = layouts[i] ?? missing();
          layouts[i] = copy;
        }
        this.waiting.kinds = before;
      }
    }
    return this.waiting.kinds.length === 0;
  }

  /** Uneven filling is worth a little: a sheet with one large hole takes a waiting piece sooner than many with small ones. */
  private moreSpread(): number {
    let sum = 0;
    for (let n = 0; n < this.changes; n++) {
      const i = this.changed[n] ?? missing();
      sum += squareOf(this.layouts[i] ?? missing()) - squareOf(this.saved[i] ?? missing());
    }
    return sum * SPREAD * this.valuePerArea;
  }

  private ruin(take: (item: number) => void): void {
    const { random, layouts } = this;
    let wanted = 1 + random.below(MOST_TAKEN);
    for (let tries = 0; wanted > 0 && tries < MOST_TRIES; tries++) {
      const index = random.below(layouts.length);
      const layout = layouts[index] ?? missing();
      const d = layout.data;
      const at = random.below(layout.slots) * STRIDE;
      if (at === 0 || (d[at + ITEM] ?? missing()) < INTERNAL) continue;
      const leaves = d[at + ITEM] === INTERNAL ? (d[at + LEAVES] ?? missing()) : 1;
      if (leaves > wanted) continue;
      this.touch(index);
      layout.remove(at, take);
      this.settle(layout);
      wanted -= leaves;
    }
  }
}

function squareOf({ w, h, area }: GuillotineLayout): number {
  const free = w * h - area;
  return (free * free) / (w * h);
}
