/** The first published answer that these functions miss, or undefined: what a changed constant must not survive. */
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/hosts/headless/calculate-one.ts";
import { calls, formulas } from "./rows.ts";

const misses = (value: unknown, { expected, tolerance }: { expected: number; tolerance: number }): boolean =>
  typeof value !== "number" || !(Math.abs(value - expected) <= tolerance);

export function firstMiss(): string | undefined {
  for (const row of calls) {
    const [name, ...given] = row.call;
    if (misses(shopFunctions.call(name, given).value, row)) return row.id;
  }
  return formulas.find((row) => misses(evaluateFormula(row.formula, shopFunctions).value, row))?.id;
}
