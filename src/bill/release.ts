/** Whether a line may be made: what stands at the head of its paper. */
import type { LineAnswer } from "./plan.ts";

export const RELEASES = ["STOP", "HOLD", "CHECK", "CLEAR"] as const;
export type Release = (typeof RELEASES)[number];

/** Open checks hold a line until somebody has accepted them; a stop cannot be accepted. */
export function releaseOf({ status, plan }: Pick<LineAnswer, "status" | "plan">): Release {
  if (status === "stop") return "STOP";
  if (status === "clear") return "CLEAR";
  return plan?.line.accepted ? "CHECK" : "HOLD";
}
