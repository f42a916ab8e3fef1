/** The cells that the checks read: to the right of the list, so that it prints without them. */

import { tableCells, value } from "../../../job/building/cells.ts";
import { storedFormula } from "../../../job/building/formulas.ts";
import type { SheetCell, SheetTable } from "../../../job/xlsx/model.ts";
import { areaName, cellName } from "../../../job/xlsx/xml.ts";

const LEFT = 8;
const TOP = 6;
export const TRIAL_TABLE: SheetTable = {
  name: "Trial",
  row: TOP,
  column: LEFT,
  headers: ["Thickness (in)", "Radius (in)", "Angle (deg)", "Try here"],
  rows: 3,
};
const ROWS = [
  [0.04, 0.16, 90, null],
  [0.08, 0.16, 90, null],
  [0.04, 0.16, 90, null],
] as const;

const first = TOP + 1;
const last = TOP + ROWS.length;
const absolute = (area: string): string => area.replace(/[A-Z]+|\d+/g, "$$$&");
const column = (at: number) => absolute(areaName(first, at, last, at));
const cell = (row: number, at: number) => absolute(cellName(row, at));

const WITH_ERROR = LEFT + 5;
const OTHERS = LEFT + 6;
const SPILLS = TOP + 6;

export const TABLE = { tryHere: cell(first, LEFT + 3) };
export const BLANKS = absolute(areaName(first, OTHERS + 2, first + 1, OTHERS + 2));
export const DATE = cell(first, OTHERS);
export const WORD = cell(first, OTHERS + 1);
export const SPILL = absolute(areaName(SPILLS, LEFT, SPILLS + 2, LEFT));
export const ERROR_SPILL = absolute(areaName(SPILLS, WITH_ERROR, SPILLS + 2, WITH_ERROR));

/** `whenStarted` keeps a formula quiet until the person has begun. */
export const trialCells = (whenStarted: (formula: string) => string): SheetCell[] => [
  value(TOP - 2, LEFT, "heading", "Cells the checks read: leave them as they are"),
  ...tableCells(TRIAL_TABLE, ROWS, ["inputNumber", "inputNumber", "inputNumber", "inputNumber"]),
  value(TOP, WITH_ERROR, "headerRight", "With an error"),
  value(first, WITH_ERROR, "figure", 0.04),
  { row: first + 1, column: WITH_ERROR, style: "figure", formula: "1/0" },
  value(last, WITH_ERROR, "figure", 0.04),
  value(TOP, OTHERS, "headerRight", "A date"),
  value(first, OTHERS, "inputMoment", 46_083.375),
  value(TOP, OTHERS + 1, "header", "A word"),
  value(first, OTHERS + 1, "text", "abc"),
  value(TOP, OTHERS + 2, "header", "Two blanks"),
  value(SPILLS - 1, LEFT, "headerRight", "Block"),
  spilled(SPILLS, LEFT, whenStarted("=SHOP.BEND.SETBACK(Trial[Thickness (in)],Trial[Radius (in)],Trial[Angle (deg)])")),
  value(SPILLS - 1, WITH_ERROR, "headerRight", "Block"),
  spilled(SPILLS, WITH_ERROR, whenStarted(`=SHOP.BEND.SETBACK(${column(WITH_ERROR)},0.16,90)`)),
];

const spilled = (row: number, at: number, formula: string): SheetCell => ({
  row,
  column: at,
  formula: storedFormula(formula),
  spills: ["figure"],
});
