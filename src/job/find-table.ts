/** Finds a table in a workbook by what its header row says, wherever it stands and whatever the sheet is called. */

import type { TableName } from "../bill/nouns/shop.ts";
import { fitsHeader, foldHeader } from "../cells/tables/recognized.ts";
import { type CellMatrix, isBlank } from "../units/cell.ts";
import { itemAt } from "../units/certain.ts";
import { type Book, type BookSheet, cellAt } from "./book.ts";

export interface FoundTable {
  readonly sheet: BookSheet;
  /** Of the header row, counted from 0. */
  readonly top: number;
  readonly left: number;
  /** The header row and everything below it up to the first empty row that no line of the table follows. */
  readonly matrix: CellMatrix;
}

/** The first range of the workbook whose header row tells this table. */
export const findTable = (book: Book, name: TableName | "bill"): FoundTable | undefined =>
  findTableWhere(book, (titles) => fitsHeader(name, titles));

/** @param fits asked of the folded words of a row of cells. */
export function findTableWhere(book: Book, fits: (titles: ReadonlySet<string>) => boolean): FoundTable | undefined {
  const found = runsOf(book).find(({ titles }) => fits(titles));
  if (!found) return undefined;
  const { sheet, top, left, right } = found;
  return { sheet, top, left, matrix: tableBelow(sheet, top, left, right) };
}

/** Cells side by side without a gap: what a header row is, and every other row too. */
interface Run {
  readonly sheet: BookSheet;
  readonly top: number;
  readonly left: number;
  readonly right: number;
  readonly titles: ReadonlySet<string>;
}

/** Every table of a workbook is looked for in the same rows: a sheet's are read once. */
const runsKnown = new WeakMap<BookSheet, readonly Run[]>();

const runsOf = (book: Book): readonly Run[] => book.flatMap(runsOfSheet);

function runsOfSheet(sheet: BookSheet): readonly Run[] {
  const known = runsKnown.get(sheet) ?? sheet.rows.flatMap((_, top) => runsIn(sheet, top));
  runsKnown.set(sheet, known);
  return known;
}

function runsIn(sheet: BookSheet, top: number): Run[] {
  const width = sheet.rows[top]?.length ?? 0;
  const runs: Run[] = [];
  for (let left = 0; left < width; left++) {
    if (isBlank(cellAt(sheet, top, left))) continue;
    let right = left;
    while (!isBlank(cellAt(sheet, top, right + 1))) right++;
    const cells = itemAt(sheet.rows, top).slice(left, right + 1);
    // Every header that is looked for has at least two words.
    if (cells.filter((cell) => typeof cell === "string").length > 1)
      runs.push({ sheet, top, left, right, titles: new Set(cells.map(foldHeader)) });
    left = right;
  }
  return runs;
}

function tableBelow(sheet: BookSheet, top: number, left: number, right: number): CellMatrix {
  const matrix: CellMatrix = [];
  for (let row = top; row < sheet.rows.length; row++) {
    const own = itemAt(sheet.rows, row);
    // A row as it is where it can be: what was read from it is known then.
    const isWhole = left === 0 && own.length === right + 1;
    const cells = isWhole ? own : Array.from({ length: right - left + 1 }, (_, i) => cellAt(sheet, row, left + i));
    if (row > top && cells.every(isBlank) && !isResumed(sheet, row, left, right)) break;
    matrix.push(cells);
  }
  return matrix;
}

/** A row left empty in the middle of a list must not hide the lines below it: a header has words alone, a sum fewer cells. */
function isResumed(sheet: BookSheet, from: number, left: number, right: number): boolean {
  for (let row = from + 1; row < sheet.rows.length; row++) {
    const cells = itemAt(sheet.rows, row)
      .slice(left, right + 1)
      .filter((cell) => !isBlank(cell));
    if (cells.length > 0) return cells.length >= LEAST_CELLS && cells.some((cell) => typeof cell === "number");
  }
  return false;
}
const LEAST_CELLS = 4;
