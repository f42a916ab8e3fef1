import type { CellValue } from "../../units/cell.ts";
import type { Area } from "../formula/address.ts";
import { sameArea } from "../graph/spill.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Sheet } from "../workbook/sheet.ts";
import { sameStored, WRITE_TOLERANCE } from "./same-stored.ts";

export interface ChangedCell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue | undefined;
  /** New extent of an array formula, when it differs from the file's. */
  readonly ref: Area | undefined;
}

/** The cells of a sheet that must be written: formula results and spilled cells that differ from the file. */
export function changedCells(sheet: Sheet): ChangedCell[] {
  const changed: ChangedCell[] = [];
  const at = (row: number, column: number): CellValue | undefined => sheet.values[column]?.[row];
  const resized = (cell: FormulaCell): Area | undefined => {
    if (cell.kind !== "dynamic" || cell.kept) return undefined;
    const now = cell.covers ?? { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column };
    return cell.ref && sameArea(cell.ref, now) ? undefined : now;
  };
  const spilled = new Map<number, CellValue | undefined>(sheet.originals);
  for (const cell of sheet.formulas) {
    const value = at(cell.row, cell.column);
    const ref = resized(cell);
    const held = cell.kept !== undefined || cell.circular;
    if (ref || (!held && !sameStored(cell.stored, value, WRITE_TOLERANCE))) {
      changed.push({ row: cell.row, column: cell.column, value, ref });
    }
    if (cell.kind !== "dynamic" || !cell.covers) continue;
    for (let row = cell.covers.top; row <= cell.covers.bottom; row++) {
      for (let column = cell.covers.left; column <= cell.covers.right; column++) {
        const key = row * 16_384 + column;
        if ((row !== cell.row || column !== cell.column) && !spilled.has(key)) spilled.set(key, undefined);
      }
    }
  }
  for (const [key, original] of spilled) {
    const row = Math.floor(key / 16_384);
    const column = key % 16_384;
    const value = at(row, column);
    if (!sameStored(original, value, WRITE_TOLERANCE)) changed.push({ row, column, value, ref: undefined });
  }
  return changed.sort((a, b) => a.row - b.row || a.column - b.column);
}
