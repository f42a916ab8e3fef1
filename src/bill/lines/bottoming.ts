/** Which lines are bottomed instead of bent in air, and what that makes of their figures. */
import { bendOutcome } from "../../calc/bend/check/bottoming.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import type { ForceCases } from "../../calc/bend/force-cases.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import { degrees } from "../../units/quantity.ts";
import type { BillLine } from "../nouns/line.ts";
import type { BendNumbers } from "./blank.ts";
import { bendLines, bottomsIn } from "./tools.ts";

/** A bottomed bend takes the radius of the nose, and its flat is made with that. */
export function bottomedNumbers(numbers: BendNumbers, line: BillLine, tools: Setup): BendNumbers {
  const nose = tools.punch?.nose;
  if (nose === undefined || !bottomsIn(line, tools)) return numbers;
  const sharpest = degrees(Math.max(...bendLines(line).flatMap(({ bendAngles }) => bendAngles.map(Math.abs))));
  const deduction = bendDeduction(line.thickness, nose, sharpest, K_DEFAULT.value, "outside");
  return { radius: nose, deduction, method: "bottoming" };
}

/** Of the bend that needs the most; undefined for a flat part. */
export function forceOf(line: BillLine, tools: Setup): ForceCases | undefined {
  const forces = bendLines(line).map((bend) => bendOutcome(bend, tools).force);
  return forces.length === 0 ? undefined : forces.reduce((a, b) => (b.expected > a.expected ? b : a));
}
