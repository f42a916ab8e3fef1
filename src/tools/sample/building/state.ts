/**
 * What a sample's State cell says: whether the functions run here, and whether this Excel hands blank cells over as blank.
 * Where either fails nothing may be quoted.
 */
import type { SheetCell } from "../xlsx/model.ts";
import { shop } from "./formulas.ts";

export const RUNNING = "The functions are running.";
const DEAD =
  "The functions are NOT running here: every figure you see is an old one or an error. Install the add-in, or do not use this workbook for work.";
const ZEROS =
  "This Excel passes blank cells to the functions as 0, so their answers are wrong: update Excel, and quote nothing until then.";

/** `version`: the cell of SHOP.VERSION; `blanks`: two cells or more in which nothing ever stands. */
export const stateFormula = (version: string, blanks: string): string =>
  `IF(ISERROR(${version}),"${DEAD}",IF(${shop("EMPTY.CELLS", { cells: blanks })}=COUNTBLANK(${blanks}),"${RUNNING}","${ZEROS}"))`;

/** It calls a function, so it is stored as Excel stores such a cell. */
export const stateCell = (row: number, column: number, version: string, blanks: string): SheetCell => ({
  row,
  column,
  style: "strong",
  formula: stateFormula(version, blanks),
  spills: ["strong"],
});

/** `answer` where everything runs, and a word in its place where it does not. `state`: the State cell, with its sheet. */
export const onlyWhenRunning = (state: string, answer: string): string =>
  `IF(${state}="${RUNNING}",${answer},"no quote: see State")`;
