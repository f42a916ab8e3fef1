/** Makes one random call and judges its answer. */
import { shopFunctions } from "../../cells/catalogue.ts";
import { CellError } from "../../units/cell.ts";
import { problemOf } from "./judge-answer.ts";
import { randomCall } from "./random-call.ts";

export interface Trial {
  /** A word for the statistics. */
  readonly outcome: string;
  readonly problem?: string | undefined;
}

export function tryCall(seed: number, index: number): Trial {
  const { record, given } = randomCall(seed, index);
  try {
    const { value } = shopFunctions.call(record.name, given as Parameters<typeof shopFunctions.call>[1]);
    const outcome = value instanceof CellError ? value.code : Array.isArray(value) ? "block" : "value";
    const problem = "polluted" in {} ? "Object.prototype was changed" : problemOf(value, given);
    return { outcome, problem: problem && `${record.name}: ${problem}` };
  } catch (problem) {
    const where = problem instanceof Error ? problem.stack?.split("\n").slice(0, 2).join(" ") : String(problem);
    return { outcome: "thrown", problem: `${record.name} threw ${where}` };
  }
}
