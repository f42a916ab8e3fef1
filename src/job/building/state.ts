/**
 * What a sample's State cell says: whether the functions run here, and whether this Excel hands blank cells over as blank.
 * Where either fails nothing may be quoted.
 */
import { DEAD, RUNNING, ZEROS } from "../state-words.ts";
import type { SheetCell } from "../xlsx/model.ts";
import { shop } from "./formulas.ts";

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
