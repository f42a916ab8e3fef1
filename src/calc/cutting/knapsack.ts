import { missing } from "../../units/certain.ts";

/**
 * A bounded knapsack filled one option at a time, in place. Only how many copies of an option each length took is kept,
 * per option, so that the filling as it stood after any option can be read back. Lengths are whole cells of a grid.
 *
 * Copies that are not enough for every length are added in shares of 1, 2, 4 and so on: any number of copies up to all of
 * them is a sum of shares, and each share is one pass (memory, unverified).
 */

/** Filling a cell takes this share of a unit of work (fitted: time against that of the places insertion looks at). */
const WORK_PER_CELL = 0.4;

export class Knapsack {
  private values = new Float64Array(0);
  private held = new Float64Array(0);
  private heldTip = -1;
  private taken: Uint16Array[] = [];
  private options = new Int32Array(256);
  private lengths = new Int32Array(256);
  private previous = new Int32Array(256);
  private count = 0;
  private tip = -1;
  private width = 0;
  /** Work since the last `reset`. */
  work = 0;

  reset(cells: number): void {
    this.width = cells + 1;
    if (this.values.length < this.width) {
      this.values = new Float64Array(this.width);
      this.taken = [];
    }
    this.values.fill(0, 0, this.width);
    this.count = 0;
    this.tip = -1;
    this.work = 0;
  }

  /** A mark from which `read` can later tell the filling as it stands now. */
  mark(): number {
    return this.tip;
  }

  /** Keeps the filling as it stands now, until the next time. */
  hold(): void {
    if (this.held.length < this.width) this.held = new Float64Array(this.values.length);
    this.held.set(this.width === this.values.length ? this.values : this.values.subarray(0, this.width));
    this.heldTip = this.tip;
  }

  /** Goes on from the filling that was kept last. */
  goOn(): void {
    this.values.set(this.width === this.held.length ? this.held : this.held.subarray(0, this.width));
    this.tip = this.heldTip;
  }

  /** Lets `option` of `length` cells be taken up to `copies` times, `value` each. */
  add(option: number, length: number, value: number, copies: number): void {
    if (length >= this.width || copies < 1) return;
    const at = this.count++;
    if (at >= this.options.length) {
      this.options = doubled(this.options);
      this.lengths = doubled(this.lengths);
      this.previous = doubled(this.previous);
    }
    this.options[at] = option;
    this.lengths[at] = length;
    this.previous[at] = this.tip;
    this.tip = at;
    let taken = this.taken[at];
    if (taken) taken.fill(0, 0, this.width);
    else {
      taken = new Uint16Array(this.values.length);
      this.taken[at] = taken;
    }
    this.work += fill(this.values, taken, this.width, length, value, copies) * WORK_PER_CELL;
  }

  /** Value of the filling of `cells` as it stands now; minus infinity below zero cells. */
  best(cells: number): number {
    return cells < 0 ? Number.NEGATIVE_INFINITY : (this.values[cells] ?? missing());
  }

  /** Reports (option, copies) of the filling of `cells` as it stood at `mark`. */
  read(mark: number, cells: number, take: (option: number, copies: number) => void): void {
    let x = cells;
    for (let at = mark; at >= 0; at = this.previous[at] ?? missing()) {
      const copies = this.taken[at]?.[x] ?? missing();
      if (copies === 0) continue;
      take(this.options[at] ?? missing(), copies);
      x -= copies * (this.lengths[at] ?? missing());
    }
  }
}

function doubled(old: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(old.length * 2);
  larger.set(old);
  return larger;
}

/** Answers the cells gone through. Here and in addShare a check of each cell costs 3 % of a plan (measured): none. */
function fill(
  values: Float64Array,
  taken: Uint16Array,
  width: number,
  length: number,
  value: number,
  copies: number,
): number {
  if (copies * length >= width - length) {
    // No length has room for more copies than there are: each builds on the shorter one as it is by now.
    for (let x = length; x < width; x++) {
      const more = values[x - length]! + value;
      if (more <= values[x]!) continue;
      values[x] = more;
      taken[x] = taken[x - length]! + 1;
    }
    return width;
  }
  let cells = 0;
  for (let left = copies, share = 1; left > 0; left -= share, share *= 2) {
    if (share > left) share = left;
    cells += addShare(values, taken, width, share * length, share * value, share);
  }
  return cells;
}

/** All copies of a share or none, from the longest length down, so that none is taken twice. */
function addShare(
  values: Float64Array,
  taken: Uint16Array,
  width: number,
  length: number,
  value: number,
  copies: number,
): number {
  for (let x = width - 1, shorter = x - length; shorter >= 0; x--, shorter--) {
    const more = values[shorter]! + value;
    if (more <= values[x]!) continue;
    values[x] = more;
    taken[x] = taken[shorter]! + copies;
  }
  return Math.max(0, width - length);
}
