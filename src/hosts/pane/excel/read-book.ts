/** The open workbook as a book: the used range of every sheet, read in two trips. */

import type { Book } from "../../../job/book.ts";
import { CellError, type CellMatrix, type CellValue, ERROR_CODES, type ErrorCode } from "../../../units/cell.ts";

export async function readBook(context: Excel.RequestContext): Promise<Book> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const used = worksheets.items.map((sheet) => ({ name: sheet.name, range: sheet.getUsedRangeOrNullObject(true) }));
  for (const { range } of used) range.load("isNullObject,values,rowIndex,columnIndex");
  await context.sync();
  return used.map(({ name, range }) => ({ name, rows: range.isNullObject ? [] : rowsOf(range) }));
}

/** The used range moved to where it stands, so that row 0, column 0 is A1. */
function rowsOf({ values, rowIndex, columnIndex }: Excel.Range): CellMatrix {
  const before = Array.from({ length: columnIndex }, () => null);
  return [
    ...Array.from({ length: rowIndex }, () => []),
    ...values.map((row: unknown[]) => [...before, ...row.map(asCell)]),
  ];
}

/** Excel hands errors over as their text. */
export function asCell(value: unknown): CellValue {
  if (typeof value === "string" && ERROR_CODES.includes(value as ErrorCode)) return new CellError(value as ErrorCode);
  return typeof value === "number" || typeof value === "boolean" ? value : value === "" ? null : String(value);
}
