/** Finds a table in a workbook by what its header row says, wherever it stands and whatever the sheet is called. */
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { type Book, type BookSheet, cellAt } from "./book.ts";

export interface FoundTable {
  readonly sheet: BookSheet;
  /** Of the header row, counted from 0. */
  readonly top: number;
  readonly left: number;
  /** The header row and everything below it up to the first empty row. */
  readonly matrix: CellMatrix;
}

/** Any one of the words of each entry must stand in the header, and none of `lacks`; units in brackets do not count. */
export interface TableWords {
  readonly has: readonly (readonly string[])[];
  readonly lacks?: readonly string[];
}

const WITHOUT_UNIT = /\s*[([][^)\]]*[)\]]\s*$/;

export const foldHeader = (cell: CellValue): string =>
  typeof cell === "string"
    ? cell
        .replace(WITHOUT_UNIT, "")
        .toLowerCase()
        .replace(/[\s\-_.:*]+/g, "")
    : "";

export function findTable(book: Book, words: TableWords): FoundTable | undefined {
  for (const sheet of book)
    for (let top = 0; top < sheet.rows.length; top++) {
      const found = headerIn(sheet, top, words);
      if (found) return { sheet, top, left: found.left, matrix: tableBelow(sheet, top, found.left, found.right) };
    }
  return undefined;
}

/** Cells side by side without a gap. */
function headerIn(
  sheet: BookSheet,
  row: number,
  { has, lacks = [] }: TableWords,
): { left: number; right: number } | undefined {
  const width = sheet.rows[row]?.length ?? 0;
  for (let left = 0; left < width; left++) {
    if (isBlank(cellAt(sheet, row, left))) continue;
    let right = left;
    while (!isBlank(cellAt(sheet, row, right + 1))) right++;
    const titles = sheet.rows[row]!.slice(left, right + 1).map(foldHeader);
    const stands = (word: string) => titles.includes(foldHeader(word));
    if (has.every((any) => any.some(stands)) && !lacks.some(stands)) return { left, right };
    left = right;
  }
  return undefined;
}

function tableBelow(sheet: BookSheet, top: number, left: number, right: number): CellMatrix {
  const matrix: CellMatrix = [];
  for (let row = top; row < sheet.rows.length; row++) {
    const cells = Array.from({ length: right - left + 1 }, (_, i) => cellAt(sheet, row, left + i));
    if (row > top && cells.every(isBlank)) break;
    matrix.push(cells);
  }
  return matrix;
}
