/** The engine's workbook as a book: a copy of its values as they are now. */

import type { Sheet } from "../sheet/workbook/sheet.ts";
import type { Workbook } from "../sheet/workbook/workbook.ts";
import type { CellValue } from "../units/cell.ts";
import type { Book } from "./book.ts";

export const bookOf = ({ sheets }: Pick<Workbook, "sheets">): Book =>
  sheets.map((sheet) => ({ name: sheet.name, rows: rowsOf(sheet) }));

const rowsOf = ({ values, lastRow, lastColumn }: Sheet): CellValue[][] =>
  Array.from({ length: lastRow + 1 }, (_, row) =>
    Array.from({ length: lastColumn + 1 }, (_, column) => values[column]?.[row] ?? null),
  );
