import { CellError, type CellMatrix, isCellError } from "../../units/cell.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Step } from "../../units/working.ts";
import { callRecord } from "../call/call.ts";
import { givenSteps, isGiven } from "../call/given-steps.ts";
import { anything } from "../parameters/anything.ts";
import { recordNamed } from "../parameters/function-name.ts";
import { type AnyRecord, defineFunction } from "../record/record.ts";
import { workingRows } from "../record/working-rows.ts";

const COLUMNS = ["Symbol", "Meaning", "Value", "Unit", "Source"] as const;

export const working = defineFunction({
  name: "WORKING",
  question: "How was this answer worked out, step by step?",
  parameters: { function: recordNamed(), ...anything() },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: { formula: '=ROUND(INDEX(SHOP.WORKING("BEND.ALLOWANCE",0.125,0.125,90,0.33),6,3),4)', answer: 0.2611 },
  source: "recorded by the calculation itself",
  calculate: ({ function: record, ...rest }): CellMatrix => {
    const given = Object.values(rest) as CellMatrix[];
    const used = given.slice(0, Object.keys(record().parameters).length);
    const steps: Step[] = [];
    const answer = callRecord(record(), used, steps, (...read) => steps.push(...givenSteps(...read)));
    if (isCellError(answer.value)) throw answer.value;
    if (steps.every(isGiven))
      throw new CellError("#N/A", `function must be one that calculates a figure; got ${record().name}`);
    return [[...COLUMNS], ...workingRows(steps, systemOf(record(), used), isGiven)];
  },
});

/** The call was answered, so its `units` argument is in order. */
function systemOf(record: AnyRecord, used: readonly CellMatrix[]): UnitSystem {
  const given = used[Object.keys(record.parameters).indexOf("units")]?.[0]?.[0];
  return typeof given === "string" && given.trim().toLowerCase() === "mm" ? "mm" : "in";
}
