/** What finished jobs took, and what they say of the shop's own pace. */
import { tableCells, value } from "../building/cells.ts";
import { shop } from "../building/formulas.ts";
import type { SheetModel, SheetTable } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import type { FinishedRow } from "./contents.ts";

const HEADER_ROW = 4;
export const FINISHED_HEADERS = ["Part", "Station", "Estimated (min)", "Recorded (min)", "Own factor"] as const;
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

export function finishedSheet(rows: readonly FinishedRow[], note: string): SheetModel {
  const table: SheetTable = {
    name: "Finished",
    row: HEADER_ROW,
    column: 1,
    headers: FINISHED_HEADERS,
    rows: rows.length,
  };
  return {
    name: "Finished",
    widths: [20, 10, 12, 12, 11, GAP, ...ANSWER.map(([width]) => width)],
    cells: [
      value(1, 1, "title", "Finished"),
      value(
        2,
        1,
        "note",
        `Left: minutes of finished jobs as estimated and as recorded, a line and station each row; copy both from the sheet Times, with the own factor that stood there. Right: what they say. From three jobs of a station on, its factor is in every time of this bill.${note}`,
      ),
      ...tableCells(table, rows, ["inputText", "inputText", "inputNumber", "inputNumber", "inputNumber"]),
      {
        row: HEADER_ROW,
        column: FINISHED_HEADERS.length + 2,
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
