/**
 * A bounded knapsack filled one option at a time. Every step writes a new row and leaves the earlier ones alone, so any
 * earlier state can be read back or gone on from. Two tables run side by side: fillings in which every part can fall
 * behind the blade, and fillings with exactly one part that must stay in front (see gauge-rule.ts). Lengths are whole
 * cells of a grid.
 */
/** Marks in place of a multiple: taken any number of times; taken as the one front part. */
const FREE = 0;
const FRONT = -1;

export class Knapsack {
  private rows: Float64Array[] = [];
  private options = new Int32Array(256);
  private lengths = new Int32Array(256);
  private multiples = new Int32Array(256);
  private previous = new Int32Array(256);
  private count = 0;
  private tip = 0;
  private width = 0;
  private half = 0;
  private hasFront = false;
  /** Cells filled since the last `reset`, for the work count. */
  work = 0;

  reset(cells: number, hasFront: boolean): void {
    this.width = cells + 1;
    this.hasFront = hasFront;
    if (this.half < this.width) {
      this.half = this.width;
      this.rows = [];
    }
    this.count = 0;
    this.tip = -1;
    this.work = 0;
    const start = this.row(-1, 0, 0);
    start.fill(0, 0, this.width);
    if (hasFront) start.fill(Number.NEGATIVE_INFINITY, this.half, this.half + this.width);
  }

  private row(option: number, length: number, multiple: number): Float64Array {
    const at = this.count++;
    if (at >= this.options.length) {
      const grow = (old: Int32Array) => {
        const larger = new Int32Array(old.length * 2);
        larger.set(old);
        return larger;
      };
      this.options = grow(this.options);
      this.lengths = grow(this.lengths);
      this.multiples = grow(this.multiples);
      this.previous = grow(this.previous);
    }
    this.options[at] = option;
    this.lengths[at] = length;
    this.multiples[at] = multiple;
    this.previous[at] = this.tip;
    this.tip = at;
    let row = this.rows[at];
    if (!row || row.length < this.half * (this.hasFront ? 2 : 1)) {
      row = new Float64Array(this.half * (this.hasFront ? 2 : 1));
      this.rows[at] = row;
    }
    this.work += this.width * (this.hasFront ? 2 : 1);
    return row;
  }

  /** A mark from which `read` can later tell what the best filling was made of, or `goOnFrom` continue. */
  mark(): number {
    return this.tip;
  }

  goOnFrom(mark: number): void {
    this.tip = mark;
  }

  /** Lets `option` of `length` cells be taken up to `copies` times, `value` each; a front part at most once in all. */
  add(option: number, length: number, value: number, copies: number, front: boolean): void {
    const { width, half } = this;
    if (length >= width || copies < 1) return;
    if (front) {
      const before = this.rows[this.tip]!;
      const after = this.row(option, length, FRONT);
      after.set(before);
      for (let x = length; x < width; x++) {
        const taken = before[x - length]! + value;
        if (taken > after[half + x]!) after[half + x] = taken;
      }
      return;
    }
    if (copies >= Math.floor((width - 1) / length)) {
      const before = this.rows[this.tip]!;
      const after = this.row(option, length, FREE);
      fill(before, after, after, 0, width, length, value);
      if (this.hasFront) fill(before, after, after, half, width, length, value);
      return;
    }
    let left = copies;
    for (let multiple = 1; left > 0; multiple *= 2) {
      const take = Math.min(multiple, left);
      left -= take;
      if (length * take >= width) continue;
      const before = this.rows[this.tip]!;
      const after = this.row(option, length, take);
      fill(before, before, after, 0, width, length * take, value * take);
      if (this.hasFront) fill(before, before, after, half, width, length * take, value * take);
    }
  }

  best(cells: number, front: boolean): number {
    if (cells < 0) return Number.NEGATIVE_INFINITY;
    return this.rows[this.tip]![(front ? this.half : 0) + cells]!;
  }

  /** Reports (option, copies) of the best filling of `cells` as it stood at `mark`. */
  read(mark: number, cells: number, front: boolean, take: (option: number, copies: number) => void): void {
    let x = cells;
    let base = front ? this.half : 0;
    for (let at = mark; at > 0; at = this.previous[at]!) {
      const before = this.rows[this.previous[at]!]!;
      const after = this.rows[at]!;
      const multiple = this.multiples[at]!;
      const step = multiple > 0 ? multiple : 1;
      let copies = 0;
      while (after[base + x] !== before[base + x]) {
        copies += step;
        x -= this.lengths[at]! * step;
        if (multiple !== FREE) break;
      }
      if (copies === 0) continue;
      take(this.options[at]!, copies);
      if (multiple === FRONT) base = 0;
    }
  }
}

/** after[x] = the better of before[x] and source[x - span] + value; source is `after` itself where copies are free. */
function fill(
  before: Float64Array,
  source: Float64Array,
  after: Float64Array,
  base: number,
  width: number,
  span: number,
  value: number,
): void {
  const start = base + span;
  const end = base + width;
  for (let x = base; x < start; x++) after[x] = before[x]!;
  for (let x = start; x < end; x++) after[x] = Math.max(before[x]!, source[x - span]! + value);
}
