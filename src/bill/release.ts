/** Whether a line may be made: the word at the head of its paper. */
import type { Subject } from "../calc/finding.ts";
import { bentStrips } from "./nouns/line.ts";
import type { LineAnswer } from "./plan.ts";
import { problemsOf } from "./problems.ts";

export const RELEASES = ["STOP", "HOLD", "CHECK", "CLEAR"] as const;
export type Release = (typeof RELEASES)[number];

/**
 * Open checks hold a line until somebody has accepted them; a stop cannot be accepted. A part with bends that was never
 * held against a tool is not clear to run, whatever else is clear about it.
 */
export function releaseOf({ status, plan }: Pick<LineAnswer, "status" | "plan">): Release {
  if (status === "stop" || !plan) return "STOP";
  const isUnchecked = !plan.tools && bentStrips(plan.line).length > 0;
  if (status === "clear" && !isUnchecked) return "CLEAR";
  return plan.line.accepted === "" ? "HOLD" : "CHECK";
}

/** Settled after the cut, with the blank's size unchanged. Force is not: another die gives another flat. */
const AFTER_THE_CUT: readonly Subject[] = ["swing", "edges", "galvanized", "finish"];
const CUT_THEN_HOLD = "cut, then HOLD";

/** Whether a line's blanks may be cut: a hold that is only of bending, welding or finish does not hold the sheet. */
export function releaseToCut(line: LineAnswer): Release | typeof CUT_THEN_HOLD {
  const release = releaseOf(line);
  const problems = problemsOf(line.findings);
  const isAfter = problems.length > 0 && problems.every(({ about }) => AFTER_THE_CUT.includes(about));
  return release === "HOLD" && isAfter && line.plan?.tools ? CUT_THEN_HOLD : release;
}
