import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import { type Interval, IntervalTree, type TreeSearch } from "./interval-tree.ts";

/** Ranges of more columns than this stand in one tree for the whole sheet. */
const NARROW = 16;
const WIDE = -1;

/** Ranges that formulas read, by sheet and column. */
export class RangeIndex {
  private readonly lists = new Map<number, Interval[]>();
  private readonly trees = new Map<number, IntervalTree>();

  add(sheet: number, area: Area, cells: readonly FormulaCell[]): void {
    const interval = { top: area.top, left: area.left, bottom: area.bottom, right: area.right, cells };
    const narrow = area.right - area.left < NARROW;
    for (let column = narrow ? area.left : WIDE; column <= (narrow ? area.right : WIDE); column++) {
      const list = this.lists.get(keyOf(sheet, column));
      if (list) list.push(interval);
      else this.lists.set(keyOf(sheet, column), [interval]);
    }
  }

  search(): RangeSearch {
    return new RangeSearch((key) => {
      const list = this.lists.get(key);
      if (!list) return undefined;
      let tree = this.trees.get(key);
      if (!tree) {
        tree = new IntervalTree(list);
        this.trees.set(key, tree);
      }
      return tree.search();
    });
  }
}

const keyOf = (sheet: number, column: number): number => sheet * 16_385 + column + 1;

/** One search over many areas: every range is found once. */
class RangeSearch {
  private readonly open = new Map<number, TreeSearch | undefined>();

  constructor(private readonly start: (key: number) => TreeSearch | undefined) {}

  take(sheet: number, area: Area, lastColumn: number, see: (cell: FormulaCell) => void): void {
    this.takeAt(keyOf(sheet, WIDE), area, see);
    for (let column = area.left; column <= Math.min(area.right, lastColumn); column++)
      this.takeAt(keyOf(sheet, column), area, see);
  }

  private takeAt(key: number, area: Area, see: (cell: FormulaCell) => void): void {
    let search = this.open.get(key);
    if (search === undefined && !this.open.has(key)) {
      search = this.start(key);
      this.open.set(key, search);
    }
    search?.take(area, see);
  }
}
