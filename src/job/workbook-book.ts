/** The engine's workbook as a book: a copy of its values as they are now. */

import type { Sheet } from "../sheet/workbook/sheet.ts";
import type { Workbook } from "../sheet/workbook/workbook.ts";
import type { CellValue } from "../units/cell.ts";
import type { Book, BookSheet } from "./book.ts";

/** @param before the book of the same workbook before an edit: what did not change of it stands in the new one. */
export const bookOf = ({ sheets }: Pick<Workbook, "sheets">, before: Book = []): Book =>
  sheets.map((sheet, i) => sheetOf(sheet, before[i]));

function sheetOf(sheet: Sheet, before: BookSheet | undefined): BookSheet {
  const rows = Array.from({ length: sheet.lastRow + 1 }, (_, row) => rowOf(sheet, row, before?.rows[row]));
  const isSame = before?.rows.length === rows.length && rows.every((row, i) => row === before.rows[i]);
  return isSame ? before : { name: sheet.name, rows };
}

function rowOf({ values, lastColumn }: Sheet, row: number, before: readonly CellValue[] = []): CellValue[] {
  const isSame = (column: number): boolean => Object.is(values[column]?.[row] ?? null, before[column]);
  let same = before.length === lastColumn + 1;
  for (let column = 0; same && column <= lastColumn; column++) same = isSame(column);
  return same
    ? (before as CellValue[])
    : Array.from({ length: lastColumn + 1 }, (_, column) => values[column]?.[row] ?? null);
}
