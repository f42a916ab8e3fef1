import { CellError } from "../../units/cell.ts";
import type { Value } from "../evaluate/value.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";

/**
 * Why a cell keeps its value where the answer would be #NAME? and the file holds a plain one: whoever wrote it knew a name
 * that stands nowhere in the workbook (a database range of another program, a name of an add-in).
 */
export const namedElsewhere = ({ stored }: FormulaCell, value: Value): FormulaCell["kept"] =>
  value instanceof CellError && value.code === "#NAME?" && stored !== undefined && !(stored instanceof CellError)
    ? { reason: "unknown-function", detail: "a name that stands nowhere in this workbook" }
    : undefined;
