/** The published answers as questions that a changed program can be asked one by one. */
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/hosts/headless/calculate-one.ts";
import { calls, formulas } from "./rows.ts";

export interface Judged {
  readonly id: string;
  misses(): boolean;
}

const isOff = (value: unknown, { expected, tolerance }: { expected: number; tolerance: number }): boolean =>
  typeof value !== "number" || !(Math.abs(value - expected) <= tolerance);

export const judged: readonly Judged[] = [
  ...calls.map((row): Judged => {
    const [name, ...given] = row.call;
    return { id: row.id, misses: () => isOff(shopFunctions.call(name, given).value, row) };
  }),
  ...formulas.map(
    (row): Judged => ({ id: row.id, misses: () => isOff(evaluateFormula(row.formula, shopFunctions).value, row) }),
  ),
];
