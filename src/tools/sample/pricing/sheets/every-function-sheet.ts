/** Functions that no other sheet shows: each with its own example, as text and calculated. */
import { RECORDS } from "../../../../cells/catalogue.ts";
import { headed, value } from "../../../../job/building/cells.ts";
import { calledIn, storedFormula } from "../../../../job/building/formulas.ts";
import type { SheetCell, SheetModel, WorkbookModel } from "../../../../job/xlsx/model.ts";

const HEADER_ROW = 4;

export const functionsIn = (...workbooks: readonly Pick<WorkbookModel, "sheets">[]): Set<string> =>
  new Set(
    workbooks.flatMap(({ sheets }) =>
      sheets.flatMap(({ cells }) => cells.flatMap(({ formula }) => (formula === undefined ? [] : calledIn(formula)))),
    ),
  );

export function everyFunctionSheet(shown: ReadonlySet<string>): SheetModel {
  const rest = RECORDS.filter(({ name }) => !shown.has(name));
  return {
    name: "Every function",
    widths: [22, 34, 62, 16, 44],
    cells: [
      ...headed(
        "Every function",
        "The functions that no other sheet of the three sample workbooks shows, each with its own example. The sheet Functions of stage-job.xlsx lists all of them. Locked.",
      ),
      ...["Function", "Question", "Example", "Answer", "Source"].map((header, i) =>
        value(HEADER_ROW, i + 1, "header", header),
      ),
      ...rest.flatMap(({ name, question, example, source }, i): SheetCell[] => {
        const row = HEADER_ROW + 1 + i;
        return [
          value(row, 1, "label", name),
          value(row, 2, "wrapped", question),
          value(row, 3, "wrapped", example.formula),
          { row, column: 4, formula: storedFormula(example.formula), spills: ["answer"] },
          value(row, 5, "wrapped", source),
        ];
      }),
    ],
    merges: ["A2:E2"],
    locked: true,
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
