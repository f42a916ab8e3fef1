/** Small builders, so that a sheet's file reads like the sheet. */
import type { CellValue } from "../../units/cell.ts";
import type { SheetCell, SheetTable } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";

export const value = (row: number, column: number, style: StyleName, content: CellValue): SheetCell => ({
  row,
  column,
  style,
  value: content,
});

/** Values side by side. */
export const across = (row: number, column: number, style: StyleName, contents: readonly CellValue[]): SheetCell[] =>
  contents.map((content, i) => value(row, column + i, style, content));

/** Title and note at the top of a sheet. */
export const headed = (title: string, note: string): SheetCell[] => [
  value(1, 1, "title", title),
  value(2, 1, "note", note),
];

/** The cells of an Excel Table: its header and its rows, a style for each column. */
export function tableCells(
  { row, column, headers }: SheetTable,
  rows: readonly (readonly CellValue[])[],
  styles: readonly StyleName[],
): SheetCell[] {
  return [
    ...headers.map((header, i) =>
      value(row, column + i, styles[i] === "inputNumber" ? "headerRight" : "header", header),
    ),
    ...rows.flatMap((cells, down) =>
      cells.map((content, i) => value(row + 1 + down, column + i, styles[i] ?? "inputText", content)),
    ),
  ];
}
