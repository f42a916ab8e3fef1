/** The drawing's inside radius against what a pair of tools gives. */
import { airRadiusByRule, type RadiusBand } from "../../calc/bend/air-radius.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { type Acceptance, acceptRadius } from "../../calc/bend/radius-acceptance.ts";
import type { Problem } from "../../calc/problem.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { BillLine } from "../tables/bill.ts";

/** undefined where the drawing asks for none. */
export function drawingRadius(
  { material, radius, radiusTolerance }: BillLine,
  { die, punch }: Setup,
  system: UnitSystem,
): { verdict: Acceptance; problem: Problem | undefined } | undefined {
  if (radius === undefined) return undefined;
  const gives: RadiusBand = airRadiusByRule(material, die.opening, punch?.nose);
  const share = gives.expected / die.opening;
  const { verdict, sentence } = acceptRadius(radius, radiusTolerance, gives, share, system);
  const problem: Problem = {
    check: "drawing radius",
    severity: "check",
    value: gives.expected,
    limit: radius,
    quantity: "length",
    message: sentence,
    remedy: verdict === "ask" ? "Ask the customer." : "Take another tool, or ask the customer.",
  };
  return { verdict, problem: verdict === "accept" ? undefined : problem };
}
