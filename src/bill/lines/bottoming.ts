/** Which lines are bottomed instead of bent in air, and what that makes of their figures. */
import { bendOutcome } from "../../calc/bend/check/bottoming.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import type { ForceCases } from "../../calc/bend/force-cases.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import type { Degrees } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine } from "../nouns/line.ts";
import { type BendNumber, type BendNumbers, bendNumbers } from "./blank.ts";
import { bendLines, bottomsIn, type Tools } from "./tools.ts";

/** In air as the AIR functions reckon; a bottomed bend takes the radius of the nose, and its flat is made with that. */
export function bendOrBottomNumbers(line: BillLine, tools: Tools & Pick<Setup, "own">, work?: Working): BendNumbers {
  const nose = tools.punch?.nose;
  if (nose === undefined || !bottomsIn(line, tools)) return bendNumbers(line, tools, work);
  const radius = step(work, "R", "radius of the nose: the bend bottoms", nose, "mm", "common practice");
  const bottomed = { thickness: line.thickness, radius, k: K_DEFAULT.value, legs: "outside" } as const;
  const angles = [...bendNumbers(line, tools).at.keys()];
  const at = new Map(
    angles.map((angle): [Degrees, BendNumber] => [
      angle,
      { radius, deduction: bendDeduction({ ...bottomed, bendAngle: angle }, work) },
    ]),
  );
  // The sharpest stands first, as among the numbers of a bend in air.
  const [sharpest] = at.values();
  return { ...sharpest!, method: "bottoming", tryFirst: undefined, at };
}

/** Of the bend that needs the most; undefined for a flat part. */
export function forceOf(line: BillLine, tools: Setup): ForceCases | undefined {
  const forces = bendLines(line).map((bend) => bendOutcome(bend, tools).force);
  return forces.length === 0 ? undefined : forces.reduce((a, b) => (b.expected > a.expected ? b : a));
}
