/** How high a row must be for its wrapped text: an estimate that a spreadsheet program may better. */
import { itemAt, missing } from "../../units/certain.ts";
import type { SheetModel } from "./model.ts";
import type { PlacedCell } from "./place.ts";
import { wraps } from "./styles.ts";
import { columnName } from "./xml.ts";

const LINE_POINTS = 13.2; // a line of 10-point Arial
/** Widths of letters in zeros, the unit of a column's width, after the published metrics of Helvetica (Arial has the same). */
const CLASSES: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[ijl.,:;'|!()[\]{}/ftIr "-]/, 0.55],
  [/[mwMW%@]/, 1.55],
  [/[A-Z&_+=<>]/, 1.22],
];
const widthOfText = (text: string): number =>
  [...text].reduce((sum, letter) => sum + (CLASSES.find(([letters]) => letters.test(letter))?.[1] ?? 1), 0);
/** What margins and an indent take from a column. */
const INDENT = 2;

/** Points, or undefined where one line will do. */
export function rowHeight(sheet: SheetModel, row: number, cells: ReadonlyMap<number, PlacedCell>): number | undefined {
  let lines = 1;
  for (const [column, { style, value }] of cells)
    if (wraps(style) && typeof value === "string")
      lines = Math.max(lines, linesOf(value, widthOf(sheet, row, column) - INDENT));
  return lines > 1 ? Math.round(lines * LINE_POINTS * 10) / 10 : undefined;
}

/** A merged cell has the room of all its columns. */
function widthOf({ widths, merges = [] }: SheetModel, row: number, column: number): number {
  const start = `${columnName(column)}${row}:`;
  const merged = merges.find((ref) => ref.startsWith(start));
  const last = merged ? itemAt(/:([A-Z]+)/.exec(merged) ?? missing(), 1) : columnName(column);
  let width = 0;
  for (let i = column; ; i++) {
    width += widths[i - 1] ?? 8;
    if (columnName(i) === last) return width;
  }
}

/** Lines after breaking at blanks, as a spreadsheet does; a word wider than the column breaks anywhere. */
export function linesOf(text: string, room: number): number {
  const blank = widthOfText(" ");
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines++;
    for (const word of paragraph.split(" ")) {
      const width = widthOfText(word);
      if (used > 0 && used + blank + width > room) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? blank : 0) + width;
      for (; used > room; used -= room) lines++;
    }
  }
  return lines;
}
