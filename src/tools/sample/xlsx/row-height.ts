/** How high a row must be for its wrapped text: an estimate that a spreadsheet program may better. */
import type { SheetModel } from "./model.ts";
import type { PlacedCell } from "./place.ts";
import { wraps } from "./styles.ts";
import { columnName } from "./xml.ts";

const LINE_POINTS = 13.2; // a line of 10-point Arial
/** Letters of running text that fit into one unit of column width, which is the width of a nought. */
const LETTERS_PER_UNIT = 1.16;

/** Points, or undefined where one line will do. */
export function rowHeight(sheet: SheetModel, row: number, cells: ReadonlyMap<number, PlacedCell>): number | undefined {
  let lines = 1;
  for (const [column, { style, value }] of cells)
    if (wraps(style) && typeof value === "string")
      lines = Math.max(lines, linesOf(value, widthOf(sheet, row, column) * LETTERS_PER_UNIT));
  return lines > 1 ? Math.round(lines * LINE_POINTS * 10) / 10 : undefined;
}

/** A merged cell has the room of all its columns. */
function widthOf({ widths, merges = [] }: SheetModel, row: number, column: number): number {
  const start = `${columnName(column)}${row}:`;
  const merged = merges.find((ref) => ref.startsWith(start));
  const last = merged ? /:([A-Z]+)/.exec(merged)![1]! : columnName(column);
  let width = 0;
  for (let i = column; ; i++) {
    width += widths[i - 1] ?? 8;
    if (columnName(i) === last) return width;
  }
}

/** Lines after breaking at blanks, as a spreadsheet does. */
export function linesOf(text: string, letters: number): number {
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines++;
    for (const word of paragraph.split(" ")) {
      if (used > 0 && used + 1 + word.length > letters) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + word.length;
    }
  }
  return lines;
}
