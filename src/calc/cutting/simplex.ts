/**
 * The master problem of the cut plan: least cost of patterns that cover every demand, within the sheets to be had. A
 * revised primal simplex with the inverse kept in full (Chvatal, Linear Programming, 1983, ch. 7 and 13; memory,
 * unverified): about a hundred rows, columns arriving one by one. Every demand row starts with a dear "left out"
 * column, so there is always a basis.
 */
export interface Column {
  readonly cost: number;
  readonly rows: Int32Array;
  readonly amounts: Float64Array;
}

const TOLERANCE = 1e-9;
const REFRESH = 400;
const SHORTLIST = 24;

export class Simplex {
  private readonly size: number;
  private readonly inverse: Float64Array;
  private readonly right: Float64Array;
  private readonly basis: Int32Array;
  private readonly level: Float64Array;
  readonly duals: Float64Array;
  readonly columns: Column[] = [];
  private readonly inBasis: boolean[] = [];
  private readonly direction: Float64Array;
  private readonly filled: Int32Array;
  private costs = new Float64Array(64);
  private starts = new Int32Array(65);
  private flatRows = new Int32Array(512);
  private flatAmounts = new Float64Array(512);
  private pivots = 0;
  work = 0;

  /** `demand` rows are at-least rows with the given price for leaving out a unit; `supply` rows are at-most rows. */
  constructor(
    private readonly demand: ArrayLike<number>,
    leftOut: ArrayLike<number>,
    private readonly supply: ArrayLike<number>,
  ) {
    const size = demand.length + supply.length;
    this.size = size;
    this.inverse = new Float64Array(size * size);
    this.right = new Float64Array(size);
    this.basis = new Int32Array(size);
    this.level = new Float64Array(size);
    this.duals = new Float64Array(size);
    this.direction = new Float64Array(size);
    this.filled = new Int32Array(size);
    for (let i = 0; i < size; i++) {
      this.inverse[i * size + i] = 1;
      // A different hair's breadth on every row keeps the steps from cycling.
      const base = i < demand.length ? demand[i]! : supply[i - demand.length]!;
      this.right[i] = base + 1e-7 * (1 + ((i * 7919) % 101) / 101);
      this.level[i] = this.right[i]!;
      this.add({
        cost: i < demand.length ? leftOut[i]! : 0,
        rows: Int32Array.of(i),
        amounts: Float64Array.of(1),
      });
      this.basis[i] = i;
      this.inBasis[i] = true;
    }
    for (let i = 0; i < demand.length; i++) {
      this.add({ cost: 0, rows: Int32Array.of(i), amounts: Float64Array.of(-1) });
    }
  }

  /** Columns from here on are the caller's. */
  get firstOwn(): number {
    return this.size + this.demand.length;
  }

  add(column: Column): number {
    const at = this.columns.push(column) - 1;
    this.inBasis.push(false);
    const start = this.starts[at]!;
    const end = start + column.rows.length;
    if (at >= this.costs.length) {
      this.costs = enlarged(this.costs, new Float64Array(at * 2));
      this.starts = enlarged(this.starts, new Int32Array(at * 2 + 1));
    }
    if (end > this.flatRows.length) {
      this.flatRows = enlarged(this.flatRows, new Int32Array(end * 2));
      this.flatAmounts = enlarged(this.flatAmounts, new Float64Array(end * 2));
    }
    this.costs[at] = column.cost;
    this.flatRows.set(column.rows, start);
    this.flatAmounts.set(column.amounts, start);
    this.starts[at + 1] = end;
    return at;
  }

  /** Dual values from scratch; between two of these they are updated step by step. */
  private price(): void {
    const { size, inverse, basis, duals, columns } = this;
    duals.fill(0);
    for (let i = 0; i < size; i++) {
      const cost = columns[basis[i]!]!.cost;
      if (cost === 0) continue;
      const base = i * size;
      for (let j = 0; j < size; j++) duals[j] = duals[j]! + cost * inverse[base + j]!;
    }
  }

  reducedCost(column: Column): number {
    let cost = column.cost;
    const { rows, amounts } = column;
    for (let k = 0; k < rows.length; k++) cost -= this.duals[rows[k]!]! * amounts[k]!;
    return cost;
  }

  /** Reduced cost of a stored column, from the flat copy of all columns. */
  private reduced(j: number): number {
    let cost = this.costs[j]!;
    const end = this.starts[j + 1]!;
    for (let k = this.starts[j]!; k < end; k++) cost -= this.duals[this.flatRows[k]!]! * this.flatAmounts[k]!;
    return cost;
  }

  /** Steps until no column is worth entering, or `over` says to stop. */
  solve(over: () => boolean): void {
    const { size } = this;
    const shortlist: number[] = [];
    this.price();
    for (let steps = 0; steps < 50 * size + 1000; steps++) {
      let entering = this.bestOf(shortlist);
      if (entering < 0) {
        if (over()) return;
        this.shortlist(shortlist);
        entering = this.bestOf(shortlist);
        if (entering < 0) return;
      }
      if (!this.enter(entering)) return;
    }
  }

  private bestOf(shortlist: number[]): number {
    let entering = -1;
    let least = -TOLERANCE;
    for (const j of shortlist) {
      if (this.inBasis[j]) continue;
      const reduced = this.reduced(j);
      if (reduced < least) {
        least = reduced;
        entering = j;
      }
    }
    return entering;
  }

  /** Looks at every column and keeps the most promising. */
  private shortlist(list: number[]): void {
    list.length = 0;
    const found: { j: number; reduced: number }[] = [];
    for (let j = 0; j < this.columns.length; j++) {
      if (this.inBasis[j]) continue;
      const reduced = this.reduced(j);
      if (reduced < -TOLERANCE) found.push({ j, reduced });
    }
    this.work += this.columns.length * 8;
    found.sort((a, b) => a.reduced - b.reduced || a.j - b.j);
    for (let k = 0; k < Math.min(SHORTLIST, found.length); k++) list.push(found[k]!.j);
  }

  private enter(entering: number): boolean {
    const { size, inverse, level, direction } = this;
    const { rows, amounts } = this.columns[entering]!;
    for (let i = 0; i < size; i++) {
      let sum = 0;
      const base = i * size;
      for (let k = 0; k < rows.length; k++) sum += inverse[base + rows[k]!]! * amounts[k]!;
      direction[i] = sum;
    }
    let leaving = -1;
    let ratio = Infinity;
    for (let i = 0; i < size; i++) {
      const rate = direction[i]!;
      if (rate <= 1e-8) continue;
      const r = level[i]! / rate;
      if (r < ratio - 1e-12 || (r < ratio + 1e-12 && leaving >= 0 && rate > direction[leaving]!)) {
        ratio = r;
        leaving = i;
      }
    }
    if (leaving < 0) return false;
    const gain = this.reduced(entering);
    this.pivot(leaving, entering, ratio);
    const base = leaving * size;
    for (let j = 0; j < size; j++) this.duals[j] = this.duals[j]! + gain * inverse[base + j]!;
    if (++this.pivots % REFRESH === 0) this.refresh();
    return true;
  }

  private pivot(leaving: number, entering: number, ratio: number): void {
    const { size, inverse, basis, level, direction } = this;
    const pivotBase = leaving * size;
    const scale = 1 / direction[leaving]!;
    const { filled } = this;
    let count = 0;
    for (let j = 0; j < size; j++) {
      const value = inverse[pivotBase + j]! * scale;
      inverse[pivotBase + j] = value;
      if (value !== 0) filled[count++] = j;
    }
    const dense = count * 2 > size;
    for (let i = 0; i < size; i++) {
      if (i === leaving) continue;
      const factor = direction[i]!;
      if (factor === 0) continue;
      const base = i * size;
      if (dense) {
        for (let j = 0; j < size; j++) inverse[base + j] = inverse[base + j]! - factor * inverse[pivotBase + j]!;
      } else {
        for (let k = 0; k < count; k++) {
          const j = filled[k]!;
          inverse[base + j] = inverse[base + j]! - factor * inverse[pivotBase + j]!;
        }
      }
      level[i] = Math.max(0, level[i]! - factor * ratio);
    }
    level[leaving] = ratio;
    this.inBasis[basis[leaving]!] = false;
    this.inBasis[entering] = true;
    basis[leaving] = entering;
    this.work += size * size;
  }

  /** Inverts the basis afresh: rounding errors of many steps do not pile up. */
  private refresh(): void {
    const { size } = this;
    const matrix = new Float64Array(size * size);
    for (let i = 0; i < size; i++) {
      const { rows, amounts } = this.columns[this.basis[i]!]!;
      for (let k = 0; k < rows.length; k++) matrix[rows[k]! * size + i] = amounts[k]!;
    }
    const result = new Float64Array(size * size);
    for (let i = 0; i < size; i++) result[i * size + i] = 1;
    for (let c = 0; c < size; c++) {
      let p = c;
      for (let r = c + 1; r < size; r++) if (Math.abs(matrix[r * size + c]!) > Math.abs(matrix[p * size + c]!)) p = r;
      const pivot = matrix[p * size + c]!;
      if (Math.abs(pivot) < 1e-12) return;
      if (p !== c) {
        for (let j = 0; j < size; j++) {
          const a = matrix[p * size + j]!;
          matrix[p * size + j] = matrix[c * size + j]!;
          matrix[c * size + j] = a;
          const b = result[p * size + j]!;
          result[p * size + j] = result[c * size + j]!;
          result[c * size + j] = b;
        }
      }
      for (let j = 0; j < size; j++) {
        matrix[c * size + j] = matrix[c * size + j]! / pivot;
        result[c * size + j] = result[c * size + j]! / pivot;
      }
      for (let r = 0; r < size; r++) {
        if (r === c) continue;
        const factor = matrix[r * size + c]!;
        if (factor === 0) continue;
        for (let j = 0; j < size; j++) {
          matrix[r * size + j] = matrix[r * size + j]! - factor * matrix[c * size + j]!;
          result[r * size + j] = result[r * size + j]! - factor * result[c * size + j]!;
        }
      }
    }
    this.inverse.set(result);
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += result[i * size + j]! * this.right[j]!;
      this.level[i] = Math.max(0, sum);
    }
    this.work += size * size * size;
    this.price();
  }

  /** Reports (column, level) of the caller's columns in the basis above zero. */
  solution(take: (column: number, level: number) => void): void {
    for (let i = 0; i < this.size; i++) {
      const column = this.basis[i]!;
      if (column >= this.firstOwn && this.level[i]! > 1e-6) take(column, this.level[i]!);
    }
  }

  objective(): number {
    let sum = 0;
    for (let i = 0; i < this.size; i++) sum += this.columns[this.basis[i]!]!.cost * this.level[i]!;
    return sum;
  }
}

function enlarged<Kind extends Float64Array | Int32Array>(old: Kind, larger: Kind): Kind {
  larger.set(old);
  return larger;
}
