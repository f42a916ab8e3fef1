/** A stretch of the series of random calls, one after the other; what was wrong with any of them. */
import { shopFunctions } from "../../cells/catalogue.ts";
import { problemOf } from "./judge-answer.ts";
import { randomCall } from "./random-call.ts";

export interface Finding {
  readonly index: number;
  readonly name: string;
  readonly problem: string;
}

export interface Stretch {
  readonly seed: number;
  readonly from: number;
  readonly calls: number;
}

/** `before` hears the number of every call, so that somebody else can see where a call hangs. */
export function runCalls({ seed, from, calls }: Stretch, before: (index: number) => void = () => {}): Finding[] {
  const found: Finding[] = [];
  for (let index = from; index < from + calls; index++) {
    before(index);
    const { record, given } = randomCall(seed, index);
    const problem = problemOfCall(record.name, given);
    if (problem !== undefined) found.push({ index, name: record.name, problem });
  }
  return found;
}

function problemOfCall(name: string, given: readonly unknown[]): string | undefined {
  try {
    const { value } = shopFunctions.call(name, given as Parameters<typeof shopFunctions.call>[1]);
    if ("polluted" in {}) return "Object.prototype was changed";
    return problemOf(value, given);
  } catch (problem) {
    return `thrown: ${problem instanceof Error ? problem.stack?.split("\n").slice(0, 2).join(" ") : String(problem)}`;
  }
}
