/**
 * Calls whose answer is known: the example of every record, taken apart into the calls that its formula makes. What
 * stands around the call (ROUND, INDEX ...) is worked by the headless engine, before and after.
 */

import type { Argument } from "../../../src/cells/call.ts";
import { findRecord, RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../../src/hosts/headless/calculate-one.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

export interface KnownAnswer {
  readonly name: string;
  readonly formula: string;
  readonly expected: CellValue;
  /** How far the answer may be from a published figure. */
  readonly tolerance?: number;
}

export const EXAMPLES: readonly KnownAnswer[] = RECORDS.map(({ name, example }) => ({
  name,
  formula: example.formula,
  expected: example.answer,
}));

type Call = (name: string, given: readonly Argument[]) => Promise<CellValue | CellMatrix>;

/** Evaluates a formula whose SHOP calls are answered elsewhere. */
export async function evaluatedBy(call: Call, formula: string): Promise<CellValue | CellMatrix> {
  const wanted: { name: string; given: readonly Argument[] }[] = [];
  evaluateFormula(formula, {
    ...shopFunctions,
    call: (name, given) => {
      wanted.push({ name, given });
      return shopFunctions.call(name, given);
    },
  });
  const answers: (CellValue | CellMatrix)[] = [];
  for (const { name, given } of wanted) answers.push(await call(findRecord(name)!.name, given));
  return evaluateFormula(formula, { ...shopFunctions, call: () => ({ value: answers.shift()!, unit: null }) }).value;
}
