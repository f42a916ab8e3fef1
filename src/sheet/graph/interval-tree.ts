import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";

/** A range that formulas read. */
export interface Interval extends Area {
  readonly cells: readonly FormulaCell[];
}

/** What is left of a tree during one search: ranges that were found are out of it. */
interface Remaining {
  readonly bottoms: Int32Array;
  readonly lowest: Int32Array;
}

/**
 * Ranges ordered by top row, with the lowest bottom of every subtree (CLRS 14.3). A search finds each range once: what it
 * found it takes out, so that 10,000 totals that all reach a changed row are looked at 10,000 times in all, not for
 * every row again.
 */
export class IntervalTree {
  private readonly items: readonly Interval[];
  private readonly bottoms: Int32Array;
  private readonly lowest: Int32Array;

  constructor(items: Interval[]) {
    this.items = items.sort((a, b) => a.top - b.top);
    this.bottoms = Int32Array.from(this.items, ({ bottom }) => bottom);
    this.lowest = new Int32Array(items.length);
    this.build(0, items.length - 1);
  }

  private build(from: number, to: number): number {
    if (from > to) return -1;
    const middle = (from + to) >> 1;
    const deepest = Math.max(this.bottoms[middle] ?? -1, this.build(from, middle - 1), this.build(middle + 1, to));
    this.lowest[middle] = deepest;
    return deepest;
  }

  search(): TreeSearch {
    return new TreeSearch(this.items, { bottoms: this.bottoms.slice(), lowest: this.lowest.slice() });
  }
}

/** One search of a tree over many areas. */
export class TreeSearch {
  constructor(
    private readonly items: readonly Interval[],
    private readonly remaining: Remaining,
  ) {}

  /** Sees the cells of every range that meets the area and was not seen before. */
  take(area: Area, see: (cell: FormulaCell) => void): void {
    this.within(0, this.items.length - 1, area, see);
  }

  /** Answers with the lowest bottom that is left between the two positions. */
  private within(from: number, to: number, area: Area, see: (cell: FormulaCell) => void): number {
    if (from > to) return -1;
    const { bottoms, lowest } = this.remaining;
    const middle = (from + to) >> 1;
    const deepest = lowest[middle] ?? -1;
    const item = this.items[middle];
    if (!item || deepest < area.top) return deepest;
    const left = this.within(from, middle - 1, area, see);
    const above = item.top <= area.bottom;
    if (above && (bottoms[middle] ?? -1) >= area.top && item.left <= area.right && item.right >= area.left) {
      item.cells.forEach(see);
      bottoms[middle] = -1;
    }
    const right = above ? this.within(middle + 1, to, area, see) : this.rest(middle + 1, to);
    const remaining = Math.max(bottoms[middle] ?? -1, left, right);
    lowest[middle] = remaining;
    return remaining;
  }

  private rest = (from: number, to: number): number =>
    from > to ? -1 : (this.remaining.lowest[(from + to) >> 1] ?? -1);
}
