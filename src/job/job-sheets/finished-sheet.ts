/** What finished jobs took, and what they say of the shop's own pace. */
import { headed, tableCells } from "../building/cells.ts";
import { shop } from "../building/formulas.ts";
import type { SheetModel, SheetTable } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import type { ShopSheetTable } from "./contents.ts";

const HEADER_ROW = 4;
export const FINISHED = "Finished";
/** Minutes of finished jobs, a line and station each; none yet. */
export const NONE_FINISHED: ShopSheetTable = {
  name: FINISHED,
  title: "Finished jobs",
  headers: ["Part", "Station", "Estimated (min)", "Recorded (min)", "Own factor"],
  rows: [],
};
const FIGURES = /^(?:estimated|recorded|own factor)/i;
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

export function finishedSheet({ headers, rows: given }: ShopSheetTable, note = ""): SheetModel {
  // A table of a worksheet has a row, if only a blank one.
  const rows = given.length > 0 ? given : [headers.map(() => null)];
  const table: SheetTable = { name: FINISHED, row: HEADER_ROW, column: 1, headers, rows: rows.length };
  return {
    name: FINISHED,
    widths: [...headers.map((_, i) => (i === 0 ? 20 : 12)), GAP, ...ANSWER.map(([width]) => width)],
    cells: [
      ...headed(
        "Finished",
        `Left: minutes of finished jobs as estimated and as recorded, a line and station each row; copy both from the sheet Times, with the own factor that stood there. Right: what they say. From three jobs of a station on, its factor is in every time of this bill.${note}`,
      ),
      ...tableCells(
        table,
        rows,
        headers.map((title) => (FIGURES.test(title) ? "inputNumber" : "inputText")),
      ),
      {
        row: HEADER_ROW,
        column: headers.length + 2,
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
