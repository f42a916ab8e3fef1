import { translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx/xlsx";
import { cellName } from "./address.ts";

interface Place {
  readonly row: number;
  readonly column: number;
}

/** A formula's text as it reads when filled from one cell to another. */
export const shiftFormula = (text: string, from: Place, to: Place): string =>
  translateFormulaToA1(translateFormulaToR1C1(text, cellName(from.row, from.column)), cellName(to.row, to.column));
