/** Whether a line may be made: what stands at the head of its paper. */
import { bentStrips } from "./nouns/line.ts";
import type { LineAnswer } from "./plan.ts";

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
