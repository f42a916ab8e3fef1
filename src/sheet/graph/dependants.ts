import { firstOf } from "../../units/certain.ts";
import type { Precedent } from "../evaluate/precedent.ts";
import { LAST_COLUMN, LAST_ROW } from "../evaluate/value.ts";
import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Sheet } from "../workbook/sheet.ts";
import { precedentAreas } from "./precedent-areas.ts";
import { RangeIndex } from "./range-index.ts";
import { RelativeReaders } from "./relative-readers.ts";

interface SheetArea {
  readonly sheet: number;
  readonly area: Area;
}

/** From so many cells on, a formula filled down a column is worth a rule of its own. */
const WORTH_A_RULE = 16;

/** Who reads a cell: built once from what the formulas name, asked for every changed area. */
export class Dependants {
  private readonly named = new RangeIndex();
  private readonly relative: RelativeReaders;
  private readonly dynamic: FormulaCell[] = [];
  /** What formulas read beyond what they name; built anew after they read something else. */
  private found: RangeIndex | undefined;

  constructor(sheets: readonly Sheet[], formulas: Iterable<FormulaCell>) {
    this.relative = new RelativeReaders(sheets);
    for (const group of byTemplateAndColumn(formulas)) {
      const { dynamic, precedents } = firstOf(group).compiled;
      if (dynamic) for (const cell of group) this.dynamic.push(cell);
      if (group.length < WORTH_A_RULE) for (const cell of group) this.addNamed([cell], undefined);
      else for (const precedent of precedents) this.addGroup(group, precedent);
    }
  }

  /** A formula was evaluated that may read other cells than before. */
  readsChanged(): void {
    this.found = undefined;
  }

  /** One entry for all cells where they read the same, a rule where they read beside themselves, else one each. */
  private addGroup(group: readonly FormulaCell[], precedent: Precedent): void {
    const first = firstOf(group);
    const sheet = precedent.sheet < 0 ? first.sheet : precedent.sheet;
    const [left, right] = [precedent.left, precedent.right].map((column, i) =>
      (i === 0 ? precedent.relativeLeft : precedent.relativeRight) ? column + first.column : column,
    ) as [number, number];
    const inside = left >= 0 && right <= LAST_COLUMN && left <= right;
    const { top, bottom, relativeTop, relativeBottom } = precedent;
    if (inside && !relativeTop && !relativeBottom && top <= bottom) {
      this.named.add(sheet, { top, left, bottom, right }, group);
      return;
    }
    const rows = group.map(({ row }) => row);
    const within = (): boolean =>
      rows.reduce((a, b) => Math.min(a, b)) + top >= 0 && rows.reduce((a, b) => Math.max(a, b)) + bottom <= LAST_ROW;
    const beside = inside && relativeTop && relativeBottom && top <= bottom && within();
    if (beside && this.relative.add(first, sheet, { left, right, top, bottom })) return;
    for (const cell of group) this.addNamed([cell], precedent);
  }

  private addNamed(cells: readonly [FormulaCell], only: Precedent | undefined): void {
    precedentAreas(
      cells[0],
      (sheet, top, left, bottom, right) => this.named.add(sheet, { top, left, bottom, right }, cells),
      only,
    );
  }

  private reads(): RangeIndex {
    if (this.found) return this.found;
    this.found = new RangeIndex();
    for (const cell of this.dynamic) for (const ref of cell.read ?? []) this.found.add(ref.sheet, ref, [cell]);
    return this.found;
  }

  /**
   * Every formula that depends on the given cells, directly or through others; the starting cells are not included.
   * Undefined when they are more than `most`.
   */
  all(start: Iterable<SheetArea>): Set<FormulaCell>;
  all(start: Iterable<SheetArea>, most: number): Set<FormulaCell> | undefined;
  all(start: Iterable<SheetArea>, most = Number.POSITIVE_INFINITY): Set<FormulaCell> | undefined {
    const found = new Set<FormulaCell>();
    const queue: SheetArea[] = [...start];
    const [named, read] = [this.named.search(), this.reads().search()];
    const see = (cell: FormulaCell): void => {
      if (found.has(cell)) return;
      found.add(cell);
      queue.push({ sheet: cell.sheet, area: coverage(cell) });
    };
    for (let next = queue.pop(); next; next = queue.pop()) {
      if (found.size > most) return undefined;
      const { sheet, area } = next;
      named.take(sheet, area, LAST_COLUMN, see);
      read.take(sheet, area, LAST_COLUMN, see);
      this.relative.of(sheet, area, see);
    }
    return found;
  }
}

/** Cells of the same formula in the same column, in the order given. */
function byTemplateAndColumn(formulas: Iterable<FormulaCell>): Iterable<FormulaCell[]> {
  const groups = new Map<unknown, Map<number, FormulaCell[]>>();
  const all: FormulaCell[][] = [];
  for (const cell of formulas) {
    if (!cell.template) continue;
    let columns = groups.get(cell.template);
    if (!columns) {
      columns = new Map();
      groups.set(cell.template, columns);
    }
    const key = cell.sheet * 16_384 + cell.column;
    const group = columns.get(key);
    if (group) group.push(cell);
    else {
      const made = [cell];
      columns.set(key, made);
      all.push(made);
    }
  }
  return all;
}

export const coverage = (cell: FormulaCell): Area =>
  cell.covers ?? cell.ref ?? { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column };
