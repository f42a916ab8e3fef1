/**
 * The linear program over patterns: least cost so that every row has enough. Revised simplex with a dense inverse, small
 * enough for a few hundred rows (Dantzig, Orden & Wolfe, Pacific J. Math. 5:183, 1955; memory, unverified). Columns come
 * in as they are priced; a changed right side is mended by the dual method, so that a dive goes on where it stands.
 */

import { missing } from "../../units/certain.ts";
import { invert } from "./invert.ts";
import * as rule from "./pivot-rules.ts";
import { Random } from "./random.ts";

export class LinearProgram {
  /** Column j gives `gives[k]` to `rows[k]` for k from start[j] up to start[j + 1]. */
  private start = new Int32Array(1024);
  private rows = new Int32Array(8192);
  private gives = new Float64Array(8192);
  private costs = new Float64Array(1024);
  /** Columns so far. */
  count = 0;
  private shortList: number[] = [];
  /** What the rows are made to want more than they do: see SHIFT. */
  private readonly shift: Float64Array;
  private readonly basic: Int32Array;
  private readonly isBasic: boolean[] = [];
  private readonly inverse: Float64Array;
  private readonly amounts: Float64Array;
  /** What one more in a row would cost. */
  readonly prices: Float64Array;
  private sinceFresh = 0;
  /** Column entries gone through: the work done. */
  work = 0;

  /**
   * The first `least` rows want at least their right side, the others allow at most theirs. What a row lacks costs `penalty`
   * each: dear enough that no row lacks anything where it can be helped.
   */
  constructor(
    private right: Float64Array,
    private readonly least: number,
    penalty: number,
  ) {
    const m = right.length;
    const random = new Random(m);
    this.shift = Float64Array.from({ length: m }, (_, r) => (r < least ? rule.SHIFT * (0.5 + random.unit()) : 0));
    this.inverse = new Float64Array(m * m);
    this.amounts = new Float64Array(m);
    this.prices = new Float64Array(m);
    this.basic = new Int32Array(m);
    for (let r = 0; r < m; r++) this.add([r], [1], r < least ? penalty : 0);
    for (let r = 0; r < least; r++) this.add([r], [-1], 0);
    this.startAgain();
  }

  /** Nothing in use: every row lacks all it wants. */
  private startAgain(): void {
    const m = this.basic.length;
    this.isBasic.fill(false);
    this.inverse.fill(0);
    for (let r = 0; r < m; r++) {
      this.basic[r] = r;
      this.isBasic[r] = true;
      this.inverse[r * m + r] = 1;
    }
    this.settle();
  }

  /** Columns of the program itself; those that are added are numbered from here. */
  get own(): number {
    return this.right.length + this.least;
  }

  add(rows: ArrayLike<number>, gives: ArrayLike<number>, cost: number): number {
    const column = this.count++;
    const end = (this.start[column] ?? missing()) + rows.length;
    if (column + 2 > this.start.length) {
      this.start = rule.doubled(this.start, new Int32Array(2 * this.start.length));
      this.costs = rule.doubled(this.costs, new Float64Array(2 * this.costs.length));
    }
    while (end > this.rows.length) {
      this.rows = rule.doubled(this.rows, new Int32Array(2 * this.rows.length));
      this.gives = rule.doubled(this.gives, new Float64Array(2 * this.gives.length));
    }
    this.rows.set(rows, this.start[column] ?? missing());
    this.gives.set(gives, this.start[column] ?? missing());
    this.start[column + 1] = end;
    this.costs[column] = cost;
    this.isBasic.push(false);
    return column;
  }

  /** Cost of a column less what it is worth at the present prices. */
  private reduced(column: number): number {
    const { rows, gives, prices } = this;
    const from = this.start[column] ?? missing();
    const to = this.start[column + 1] ?? missing();
    let left = this.costs[column] ?? missing();
    for (let k = from; k < to; k++) left -= (prices[rows[k] ?? missing()] ?? missing()) * (gives[k] ?? missing());
    this.work += to - from;
    return left;
  }

  /** What the rows want at what one more would cost, which is what the columns in use cost without the shift. */
  get cost(): number {
    let sum = 0;
    for (let r = 0; r < this.right.length; r++) sum += (this.prices[r] ?? missing()) * (this.right[r] ?? missing());
    return sum;
  }

  private get shiftedCost(): number {
    const { costs, amounts } = this;
    return this.basic.reduce((sum, column, r) => sum + (costs[column] ?? missing()) * (amounts[r] ?? missing()), 0);
  }

  /** Calls `take` with every column in use and how much of it. */
  each(take: (column: number, amount: number) => void): void {
    for (let r = 0; r < this.basic.length; r++) {
      const column = this.basic[r] ?? missing();
      const amount = this.amounts[r] ?? missing();
      if (amount > rule.USED && column >= this.own) take(column, amount);
    }
  }

  /** Brings columns in as long as one saves; the amounts must be 0 or more. */
  solve(over: () => boolean): void {
    const direction = new Float64Array(this.basic.length);
    let idle = 0;
    let before = this.shiftedCost;
    for (let pivots = 0; pivots < rule.MOST_PIVOTS * this.basic.length && !over(); pivots++) {
      const entering = this.mostSaving(idle > rule.PATIENCE);
      if (entering < 0) return;
      this.through(entering, direction);
      const leaving = rule.leavingRow(direction, this.amounts);
      if (leaving < 0) return;
      this.pivot(entering, leaving, direction);
      const now = this.shiftedCost;
      idle = now < before - rule.NOTHING ? 0 : idle + 1;
      before = now;
    }
  }

  /** A new right side: rows that would get less than nothing are mended first. */
  change(right: Float64Array, over: () => boolean): void {
    this.right = right;
    this.settle();
    const m = this.basic.length;
    const direction = new Float64Array(m);
    for (let pivots = 0; !over(); pivots++) {
      if (pivots > rule.MOST_PIVOTS * m) {
        this.startAgain();
        return;
      }
      let leaving = -1;
      let worst = -rule.LEAST_PIVOT;
      for (let r = 0; r < m; r++) {
        const amount = this.amounts[r] ?? missing();
        if (amount >= worst) continue;
        worst = amount;
        leaving = r;
      }
      if (leaving < 0) return;
      const entering = this.cheapestFor(leaving);
      if (entering < 0) return;
      this.through(entering, direction);
      this.pivot(entering, leaving, direction);
    }
  }

  private mostSaving(first: boolean): number {
    const nothing = -rule.NOTHING * Math.max(1, Math.abs(this.shiftedCost));
    if (!first) {
      const again = this.best(this.shortList, nothing);
      if (again >= 0) return again;
    }
    const saving: { column: number; reduced: number }[] = [];
    for (let column = 0; column < this.count; column++) {
      if (this.isBasic[column]) continue;
      const reduced = this.reduced(column);
      if (reduced >= nothing) continue;
      if (first) return column;
      saving.push({ column, reduced });
    }
    saving.sort((a, b) => a.reduced - b.reduced);
    this.shortList = saving.slice(0, rule.SHORT_LIST).map(({ column }) => column);
    return this.shortList[0] ?? -1;
  }

  private best(columns: readonly number[], nothing: number): number {
    let best = -1;
    let least = nothing;
    for (const column of columns) {
      const reduced = this.isBasic[column] ? 0 : this.reduced(column);
      if (reduced >= least) continue;
      best = column;
      least = reduced;
    }
    return best;
  }

  /** The column that mends row `leaving` at the least loss. */
  private cheapestFor(leaving: number): number {
    const m = this.basic.length;
    let best = -1;
    let least = Infinity;
    let strongest = 0;
    const { rows, gives, start, inverse } = this;
    for (let j = 0; j < this.count; j++) {
      if (this.isBasic[j]) continue;
      let along = 0;
      const from = start[j] ?? missing();
      const to = start[j + 1] ?? missing();
      for (let k = from; k < to; k++)
        along += (inverse[leaving * m + (rows[k] ?? missing())] ?? missing()) * (gives[k] ?? missing());
      this.work += to - from;
      if (along >= -rule.LEAST_PIVOT) continue;
      const ratio = Math.max(0, this.reduced(j)) / -along;
      if (ratio > least + rule.NOTHING || (ratio > least - rule.NOTHING && -along <= strongest)) continue;
      least = Math.min(least, ratio);
      strongest = -along;
      best = j;
    }
    return best;
  }

  /** The column as a sum of the basic ones. */
  private through(column: number, into: Float64Array): void {
    const m = this.basic.length;
    const { rows, gives, inverse } = this;
    const from = this.start[column] ?? missing();
    const to = this.start[column + 1] ?? missing();
    for (let r = 0; r < m; r++) {
      let sum = 0;
      for (let k = from; k < to; k++)
        sum += (inverse[r * m + (rows[k] ?? missing())] ?? missing()) * (gives[k] ?? missing());
      into[r] = sum;
    }
    this.work += m * (to - from);
  }

  private pivot(entering: number, leaving: number, direction: Float64Array): void {
    const m = this.basic.length;
    const { inverse, amounts, prices } = this;
    const reduced = this.reduced(entering);
    const at = leaving * m;
    const turn = 1 / (direction[leaving] ?? missing());
    const filled: number[] = [];
    for (let k = 0; k < m; k++) {
      const share = inverse[at + k] ?? missing();
      if (share === 0) continue;
      inverse[at + k] = share * turn;
      filled.push(k);
    }
    amounts[leaving] = (amounts[leaving] ?? missing()) * turn;
    for (let r = 0; r < m; r++) {
      const factor = direction[r] ?? missing();
      if (r === leaving || Math.abs(factor) < 1e-14) continue;
      const row = r * m;
      for (const k of filled)
        inverse[row + k] = (inverse[row + k] ?? missing()) - factor * (inverse[at + k] ?? missing());
      amounts[r] = (amounts[r] ?? missing()) - factor * (amounts[leaving] ?? missing());
      this.work += filled.length;
    }
    for (let k = 0; k < m; k++) prices[k] = (prices[k] ?? missing()) + reduced * (inverse[at + k] ?? missing());
    this.isBasic[this.basic[leaving] ?? missing()] = false;
    this.basic[leaving] = entering;
    this.isBasic[entering] = true;
    if (++this.sinceFresh >= rule.FRESH_AFTER) this.refresh();
  }

  /** Amounts and prices from the inverse. */
  private settle(): void {
    const m = this.basic.length;
    this.prices.fill(0);
    for (let r = 0; r < m; r++) {
      const cost = this.costs[this.basic[r] ?? missing()] ?? missing();
      let amount = 0;
      for (let k = 0; k < m; k++) {
        const share = this.inverse[r * m + k] ?? missing();
        amount += share * ((this.right[k] ?? missing()) + (this.shift[k] ?? missing()));
        this.prices[k] = (this.prices[k] ?? missing()) + cost * share;
      }
      this.amounts[r] = amount;
    }
    this.work += m * m;
  }

  /** The inverse of the basic columns from nothing: takes away what rounding has left in it. */
  private refresh(): void {
    this.sinceFresh = 0;
    const m = this.basic.length;
    const rows = Array.from({ length: m }, () => new Float64Array(2 * m));
    this.basic.forEach((column, k) => {
      for (let n = this.start[column] ?? missing(); n < (this.start[column + 1] ?? missing()); n++)
        (rows[this.rows[n] ?? missing()] ?? missing())[k] = this.gives[n] ?? missing();
    });
    this.work += m * m * m;
    if (!invert(rows, rule.LEAST_PIVOT)) return;
    rows.forEach((row, r) => void this.inverse.set(row.subarray(m), r * m));
    this.settle();
  }
}
