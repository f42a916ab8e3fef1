/**
 * The workbook for the first user in a real Excel: a row for each point that nobody could confirm without one, and what
 * to send back. Nothing is answered before an x is typed, so that no answer can be an old one out of the file.
 */
import { value } from "../../../job/building/cells.ts";
import type { SheetCell, SheetModel, WorkbookModel } from "../../../job/xlsx/model.ts";
import { CHECKS, type Check, stored, TRIALS } from "./checks.ts";
import { TRIAL_TABLE, trialCells } from "./trial-cells.ts";

const START = "$B$4";
const HEADER_ROW = 6;
const FIRST = HEADER_ROW + 1;
const LAST = FIRST + CHECKS.length - 1;
const FIRST_TRIAL = LAST + 2;
const LAST_TRIAL = FIRST_TRIAL + TRIALS.length - 1;
const [ANSWER, EXPECTED, RIGHT] = ["C", "D", "E"];

/** A typed formula that is quiet until the x is there. */
const whenStarted = (typed: string): string => `=IF(${START}="","",${typed.replace(/^=/, "")})`;

function checkCells(check: Check, i: number): SheetCell[] {
  const row = FIRST + i;
  const formula = stored({ formula: whenStarted(check.formula) });
  const { expected, errorType } = check;
  const isFormula = typeof expected === "object" && expected !== null && "formula" in expected;
  return [
    value(row, 1, "label", check.point),
    value(row, 2, "wrapped", check.how),
    { row, column: 3, formula, ...(/_xldudf_/.test(formula) ? { spills: ["answer"] } : { style: "answer" }) },
    isFormula ? { row, column: 4, style: "answer", formula: expected.formula } : value(row, 4, "answer", expected),
    { row, column: 5, style: "status", formula: `IF(${START}="","",IF(${rightOf(row, errorType)},"right","look"))` },
  ];
}

const rightOf = (row: number, errorType: number | undefined): string => {
  const [answer, expected] = [`${ANSWER}${row}`, `${EXPECTED}${row}`];
  if (errorType !== undefined) return `IF(ISERROR(${answer}),ERROR.TYPE(${answer})=${errorType},FALSE)`;
  return `IF(ISERROR(${answer}),FALSE,IF(ISNUMBER(${expected}),IF(ISNUMBER(${answer}),ABS(${answer}-${expected})<1E-9,FALSE),${answer}=${expected}))`;
};

function trialRow({ point, how, right, cell }: (typeof TRIALS)[number], i: number): SheetCell[] {
  const row = FIRST_TRIAL + i;
  const typed = cell ?? `${ANSWER}${row}`;
  return [
    value(row, 1, "label", point),
    value(row, 2, "wrapped", how),
    cell ? value(row, 3, "answer", "in the table") : value(row, 3, "inputText", null),
    value(row, 4, "answer", cell ? null : "yes (type yes or no)"),
    { row, column: 5, style: "status", formula: `IF(ISBLANK(${typed}),"to try",IF(${right(typed)},"right","look"))` },
  ];
}

const checked = `${RIGHT}${FIRST}:${RIGHT}${LAST}`;
const tried = `${RIGHT}${FIRST_TRIAL}:${RIGHT}${LAST_TRIAL}`;
const HEADLINE =
  `IF(${START}="","Type x in ${START.replaceAll("$", "")} to begin: every row is then calculated in this Excel.",` +
  `COUNTIF(${checked},"right")&" of "&ROWS(${checked})&" right in this Excel"` +
  `&IF(COUNTIF(${RIGHT}${FIRST}:${RIGHT}${LAST_TRIAL},"look")=0,"","; LOOK at "&COUNTIF(${RIGHT}${FIRST}:${RIGHT}${LAST_TRIAL},"look")&" below")` +
  `&IF(COUNTIF(${tried},"to try")=0,"","; "&COUNTIF(${tried},"to try")&" more to try by hand"))`;
const SEND_BACK =
  "Where a row says look: send this workbook as saved, a picture of the row with the mouse on its answer, and the version and build under File, Account (on a Mac: Excel, About). Rows that say #NAME? all together: the add-in is not loaded; close every Excel window, open again, and look for Function guide on the Home tab.";

const sheet = (): SheetModel => ({
  name: "First run",
  widths: [23, 58, 34, 34, 9, 3, 3, 13, 11, 11, 11, 3, 13, 17, 10, 11],
  cells: [
    value(1, 1, "title", "First run in this Excel"),
    { row: 2, column: 1, style: "strong", formula: HEADLINE },
    value(3, 1, "note", `${SEND_BACK} The figures are invented; no machine or job is meant.`),
    value(4, 1, "label", "Begin"),
    value(4, 2, "inputText", null),
    ...["Point", "What is checked", "Answer here", "Must be", "Right?"].map((header, i) =>
      value(HEADER_ROW, i + 1, "header", header),
    ),
    ...CHECKS.flatMap(checkCells),
    value(FIRST_TRIAL - 1, 1, "heading", "By hand"),
    ...TRIALS.flatMap(trialRow),
    ...trialCells(whenStarted),
  ],
  tables: [TRIAL_TABLE],
  emphasis: [{ area: `${RIGHT}${FIRST}:${RIGHT}${LAST_TRIAL}`, look: "stop", formula: `${RIGHT}${FIRST}="look"` }],
  merges: ["A2:E2", "A3:E3"],
  frozen: { rows: HEADER_ROW, columns: 1 },
  print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}`, area: `A1:E${LAST_TRIAL}` },
});

export const firstRunModel = (): WorkbookModel => ({ title: "First run in this Excel", sheets: [sheet()] });
