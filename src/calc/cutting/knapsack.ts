/**
 * A bounded knapsack filled one option at a time. Every step writes a new row and leaves the earlier ones alone, so any
 * earlier state can be read back or gone on from. Lengths are whole cells of a grid.
 */
/** Mark in place of a multiple: taken any number of times. */
const FREE = 0;

export class Knapsack {
  private rows: Float64Array[] = [];
  private options = new Int32Array(256);
  private lengths = new Int32Array(256);
  private multiples = new Int32Array(256);
  private previous = new Int32Array(256);
  private count = 0;
  private tip = -1;
  private width = 0;
  private longest = 0;
  /** Cells filled since the last `reset`, for the work count. */
  work = 0;

  reset(cells: number): void {
    this.width = cells + 1;
    if (this.longest < this.width) {
      this.longest = this.width;
      this.rows = [];
    }
    this.count = 0;
    this.tip = -1;
    this.work = 0;
    this.row(-1, 0, 0).fill(0, 0, this.width);
  }

  private row(option: number, length: number, multiple: number): Float64Array {
    const at = this.count++;
    if (at >= this.options.length) {
      this.options = doubled(this.options);
      this.lengths = doubled(this.lengths);
      this.multiples = doubled(this.multiples);
      this.previous = doubled(this.previous);
    }
    this.options[at] = option;
    this.lengths[at] = length;
    this.multiples[at] = multiple;
    this.previous[at] = this.tip;
    this.tip = at;
    let row = this.rows[at];
    if (!row) {
      row = new Float64Array(this.longest);
      this.rows[at] = row;
    }
    this.work += this.width;
    return row;
  }

  /** A mark from which `best` and `read` can later tell the filling, or `goOnFrom` continue. */
  mark(): number {
    return this.tip;
  }

  goOnFrom(mark: number): void {
    this.tip = mark;
  }

  /** Lets `option` of `length` cells be taken up to `copies` times, `value` each. */
  add(option: number, length: number, value: number, copies: number): void {
    const { width } = this;
    if (length >= width || copies < 1) return;
    if (copies >= Math.floor((width - 1) / length)) {
      const before = this.rows[this.tip]!;
      const after = this.row(option, length, FREE);
      fill(before, after, after, width, length, value);
      return;
    }
    let left = copies;
    for (let multiple = 1; left > 0; multiple *= 2) {
      const take = Math.min(multiple, left);
      left -= take;
      if (length * take >= width) continue;
      const before = this.rows[this.tip]!;
      const after = this.row(option, length, take);
      fill(before, before, after, width, length * take, value * take);
    }
  }

  /** Value of the best filling of `cells` as it stood at `mark`; minus infinity below zero cells. */
  best(mark: number, cells: number): number {
    return cells < 0 ? Number.NEGATIVE_INFINITY : this.rows[mark]![cells]!;
  }

  /** Reports (option, copies) of that filling. */
  read(mark: number, cells: number, take: (option: number, copies: number) => void): void {
    let x = cells;
    for (let at = mark; at > 0; at = this.previous[at]!) {
      const before = this.rows[this.previous[at]!]!;
      const after = this.rows[at]!;
      const multiple = this.multiples[at]!;
      const step = multiple === FREE ? 1 : multiple;
      let copies = 0;
      while (after[x] !== before[x]) {
        copies += step;
        x -= this.lengths[at]! * step;
        if (multiple !== FREE) break;
      }
      if (copies > 0) take(this.options[at]!, copies);
    }
  }
}

function doubled(old: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(old.length * 2);
  larger.set(old);
  return larger;
}

/** after[x] = the better of before[x] and source[x - span] + value; source is `after` itself where copies are free. */
function fill(
  before: Float64Array,
  source: Float64Array,
  after: Float64Array,
  width: number,
  span: number,
  value: number,
): void {
  for (let x = 0; x < span; x++) after[x] = before[x]!;
  for (let x = span; x < width; x++) after[x] = Math.max(before[x]!, source[x - span]! + value);
}
