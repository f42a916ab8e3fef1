import { itemAt } from "../../units/certain.ts";
import type { Area } from "../formula/address.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Sheet } from "../workbook/sheet.ts";

/** Cells of one formula filled down a column that read a place at a fixed distance from their own row. */
interface Rule {
  readonly template: FormulaCell["template"];
  readonly sheet: number;
  readonly column: number;
  /** Rows read, counted from the cell's own. */
  readonly from: number;
  readonly to: number;
}

/** The widest and highest neighborhood that is kept as a rule. */
const WIDEST = 64;

/**
 * Readers that need no list: who reads B7 in a column filled down with A*B is the cell of that formula in row 7. A rule
 * for the column says so for all of its cells, so that 100,000 rows are as quickly made ready as ten.
 */
export class RelativeReaders {
  private readonly rules = new Map<number, Rule[]>();

  constructor(private readonly sheets: readonly Sheet[]) {}

  /** Rows of the neighborhood counted from the cell's own. False when it is too large for a rule. */
  add(first: FormulaCell, sheet: number, { left, right, top: from, bottom: to }: Area): boolean {
    if (right - left >= WIDEST || to - from >= WIDEST) return false;
    const rule = { template: first.template, sheet: first.sheet, column: first.column, from, to };
    for (let column = left; column <= right; column++) {
      const key = sheet * 16_384 + column;
      const list = this.rules.get(key);
      if (list) list.push(rule);
      else this.rules.set(key, [rule]);
    }
    return true;
  }

  of(sheet: number, area: Area, see: (cell: FormulaCell) => void): void {
    const { lastColumn } = itemAt(this.sheets, sheet);
    for (let column = area.left; column <= Math.min(area.right, lastColumn); column++) {
      for (const rule of this.rules.get(sheet * 16_384 + column) ?? []) {
        const target = itemAt(this.sheets, rule.sheet);
        const owners = target.owners[rule.column];
        if (!owners) continue;
        const last = Math.min(area.bottom - rule.from, owners.length - 1);
        for (let row = Math.max(0, area.top - rule.to); row <= last; row++) {
          const cell = owners[row];
          if (cell !== undefined && cell.template === rule.template && cell.row === row && cell.column === rule.column)
            see(cell);
        }
      }
    }
  }
}
