/** Finds the shop's tables in a workbook by their header rows, wherever they stand. */
import { type Columns, findColumn } from "../../../cells/tables/column.ts";
import { type CellMatrix, type CellValue, isBlank } from "../../../units/cell.ts";
import { Refusal } from "../../../units/refusal.ts";
import type { Sheet } from "../workbook/sheet.ts";
import type { Workbook } from "../workbook/workbook.ts";

/**
 * The first range whose header begins with the table's own first column ("Brake") and has all it must have, down to the
 * first row that is blank in that column. undefined where there is none.
 */
export function findTable(workbook: Workbook, columns: Columns): CellMatrix | undefined {
  const own = Object.values(columns)[0]!.headers[0]!.toLowerCase();
  for (const sheet of workbook.sheets)
    for (let row = 0; row <= sheet.lastRow; row++)
      for (let column = 0; column <= sheet.lastColumn; column++) {
        const cell = at(sheet, row, column);
        if (typeof cell !== "string" || cell.trim().toLowerCase() !== own) continue;
        const header = run(sheet, row, column);
        if (hasAll(header, columns)) return block(sheet, row, column, header.length);
      }
  return undefined;
}

const at = (sheet: Sheet, row: number, column: number): CellValue => sheet.values[column]?.[row] ?? null;

/** The header to the right, up to the first blank. */
function run(sheet: Sheet, row: number, first: number): CellValue[] {
  const cells: CellValue[] = [];
  for (let column = first; !isBlank(at(sheet, row, column)); column++) cells.push(at(sheet, row, column));
  return cells;
}

function hasAll(header: readonly CellValue[], columns: Columns): boolean {
  try {
    for (const column of Object.values(columns)) findColumn(header, column, "table");
    return true;
  } catch (problem) {
    if (problem instanceof Refusal) return false;
    throw problem;
  }
}

function block(sheet: Sheet, top: number, left: number, width: number): CellMatrix {
  const rows: CellMatrix = [];
  for (let row = top; row <= sheet.lastRow && !isBlank(at(sheet, row, left)); row++)
    rows.push(Array.from({ length: width }, (_, i) => at(sheet, row, left + i)));
  return rows;
}
