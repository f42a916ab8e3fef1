import type { RangeRef } from "../evaluate/value.ts";
import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import { precedentAreas } from "./precedent-areas.ts";

interface Interval extends Area {
  readonly cell: FormulaCell;
}

/** Ranges of one sheet that formulas read, ordered by top row, with the lowest bottom of every subtree (CLRS 14.3). */
class IntervalTree {
  private readonly items: Interval[];
  private readonly lowest: Int32Array;

  constructor(items: Interval[]) {
    this.items = items.sort((a, b) => a.top - b.top);
    this.lowest = new Int32Array(items.length);
    this.build(0, items.length - 1);
  }

  private build(from: number, to: number): number {
    if (from > to) return -1;
    const middle = (from + to) >> 1;
    const deepest = Math.max(this.items[middle]!.bottom, this.build(from, middle - 1), this.build(middle + 1, to));
    this.lowest[middle] = deepest;
    return deepest;
  }

  stab(area: Area, see: (cell: FormulaCell) => void): void {
    const ranges: [number, number][] = [[0, this.items.length - 1]];
    for (let range = ranges.pop(); range; range = ranges.pop()) {
      const [from, to] = range;
      if (from > to) continue;
      const middle = (from + to) >> 1;
      if (this.lowest[middle]! < area.top) continue;
      ranges.push([from, middle - 1]);
      const item = this.items[middle]!;
      if (item.top > area.bottom) continue;
      if (item.bottom >= area.top && item.left <= area.right && item.right >= area.left) see(item.cell);
      ranges.push([middle + 1, to]);
    }
  }
}

/** Who reads a cell: built once, asked for every changed area. */
export class Dependants {
  private readonly single = new Map<number, FormulaCell[]>();
  private readonly ranges = new Map<number, IntervalTree>();

  constructor(formulas: Iterable<FormulaCell>) {
    const intervals = new Map<number, Interval[]>();
    const add = (cell: FormulaCell, ref: RangeRef | (Area & { sheet: number })): void => {
      if (ref.top === ref.bottom && ref.left === ref.right) {
        const key = cellKey(ref.sheet, ref.top, ref.left);
        const list = this.single.get(key);
        if (list) list.push(cell);
        else this.single.set(key, [cell]);
        return;
      }
      const list = intervals.get(ref.sheet) ?? [];
      list.push({ top: ref.top, left: ref.left, bottom: ref.bottom, right: ref.right, cell });
      intervals.set(ref.sheet, list);
    };
    for (const cell of formulas) {
      precedentAreas(cell, (sheet, top, left, bottom, right) => add(cell, { sheet, top, left, bottom, right }));
      for (const ref of cell.read ?? []) add(cell, ref);
    }
    for (const [sheet, list] of intervals) this.ranges.set(sheet, new IntervalTree(list));
  }

  of(sheet: number, area: Area, see: (cell: FormulaCell) => void): void {
    this.ranges.get(sheet)?.stab(area, see);
    const cells = (area.bottom - area.top + 1) * (area.right - area.left + 1);
    if (cells > this.single.size) {
      this.ofLarge(sheet, area, see);
      return;
    }
    for (let row = area.top; row <= area.bottom; row++) {
      for (let column = area.left; column <= area.right; column++)
        this.single.get(cellKey(sheet, row, column))?.forEach(see);
    }
  }

  private ofLarge(sheet: number, area: Area, see: (cell: FormulaCell) => void): void {
    for (const [key, cells] of this.single) {
      const column = key % 16_384;
      const row = Math.floor(key / 16_384) % 1_048_576;
      const inside = row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
      if (inside && Math.floor(key / 16_384 / 1_048_576) === sheet) cells.forEach(see);
    }
  }
}

const cellKey = (sheet: number, row: number, column: number): number => (sheet * 1_048_576 + row) * 16_384 + column;

/** Every formula that depends on the given cells, directly or through others. The starting cells are not included. */
export function allDependants(
  dependants: Dependants,
  start: Iterable<{ readonly sheet: number; readonly area: Area }>,
): Set<FormulaCell> {
  const found = new Set<FormulaCell>();
  const queue: { sheet: number; area: Area }[] = [...start];
  for (let next = queue.pop(); next; next = queue.pop()) {
    dependants.of(next.sheet, next.area, (cell) => {
      if (found.has(cell)) return;
      found.add(cell);
      queue.push({ sheet: cell.sheet, area: coverage(cell) });
    });
  }
  return found;
}

export const coverage = (cell: FormulaCell): Area =>
  cell.covers ?? cell.ref ?? { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column };
