/**
 * The published answers as questions that a changed program can be asked one by one. Where a row names no edition it is
 * asked of 2026.1: its answers never change.
 */
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/sheet/recalculate/calculate-one.ts";
import type { CellMatrix, CellValue } from "../../src/units/cell.ts";
import { underRule } from "../cells/example/tables.ts";
import type { Published, PublishedCell, PublishedFormula } from "./published.ts";
import { calls, cells, formulas } from "./rows.ts";

type Row = Published | PublishedCell | PublishedFormula;

export interface Judged {
  readonly row: Row;
  /** What the functions answer now. */
  answer(): unknown;
  misses(): boolean;
}

function answerOf(row: Row): unknown {
  if ("formula" in row) return evaluateFormula(row.formula, shopFunctions).value;
  const [name, ...given] = row.call;
  const { value } = shopFunctions.call(name, underRule(name, given as readonly (CellMatrix | CellValue)[]));
  if (!("column" in row)) return value;
  const [header, ...rows] = value as CellMatrix;
  return rows[row.row]?.[header!.findIndex((each) => String(each).startsWith(row.column))];
}

export const judged: readonly Judged[] = [...calls, ...cells, ...formulas].map((row) => ({
  row,
  answer: () => answerOf(row),
  misses: () => {
    const value = answerOf(row);
    return typeof value !== "number" || !(Math.abs(value - row.expected) <= row.tolerance);
  },
}));
