import type { CellMatrix, CellValue } from "../../../../units/cell.ts";
import { tableCells, value } from "../../building/cells.ts";
import { shop } from "../../building/formulas.ts";
import type { SheetModel, SheetTable } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";

const HEADER_ROW = 4;
const HEADERS = ["Part", "Station", "Estimated (min)", "Recorded (min)", "Own factor"] as const;
/** Of jobs before this one, a line and station each; the own factor is the one that stood beside the estimate. */
const ROWS: readonly (readonly CellValue[])[] = [
  ["Lantern bracket", "Brake", 42, 46, null],
  ["Gate hinge plate", "Brake", 31, 36, null],
  ["Awning channel", "Brake", 58, 61, null],
  ["Bench foot", "Brake", 24, 29, null],
  ["Lantern bracket", "Shear", 26, 24, null],
  ["Gate hinge plate", "Shear", 18, 19, null],
  ["Awning channel", "Shear", 33, 31, null],
  ["Gate hinge plate", "Deburr", 22, 25, null],
  ["Bench foot", "Deburr", 15, 19, null],
];
export const FINISHED: CellMatrix = [[...HEADERS], ...ROWS.map((row) => [...row])];
const GAP = 2;
const ANSWER: readonly (readonly [width: number, style: StyleName])[] = [
  [11, "label"],
  [7, "count"],
  [11, "figure"],
  [9, "figure"],
  [9, "figure"],
  [9, "figure"],
  [44, "wrapped"],
];

export function finishedSheet(): SheetModel {
  const table: SheetTable = { name: "Finished", row: HEADER_ROW, column: 1, headers: HEADERS, rows: ROWS.length };
  return {
    name: "Finished",
    widths: [20, 10, 12, 12, 11, GAP, ...ANSWER.map(([width]) => width)],
    cells: [
      value(1, 1, "title", "Finished"),
      value(
        2,
        1,
        "note",
        "Left: minutes of finished jobs as estimated and as recorded, a line and station each row; copy both from the sheet Times, with the own factor that stood there. Right: what they say. From three jobs of a station on, its factor is in every time of this bill. Invented.",
      ),
      ...tableCells(table, ROWS, ["inputText", "inputText", "inputNumber", "inputNumber", "inputNumber"]),
      {
        row: HEADER_ROW,
        column: HEADERS.length + 2,
        heads: ANSWER.map(([, style]) => (style === "figure" || style === "count" ? "headerRight" : "header")),
        spills: ANSWER.map(([, style]) => style),
        formula: shop("TIME.TABLE", { finished: "Finished[#All]" }),
      },
    ],
    tables: [table],
    merges: ["A2:M2"],
    frozen: { rows: HEADER_ROW, columns: 0 },
    print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
