/** Which lines are bottomed instead of air bent, and what that does to their figures. */
import { askedOver, estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { bendOutcome, between, pressedShare } from "../../calc/bend/check/bottoming.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import type { ForceCases } from "../../calc/bend/force-cases.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import { firstOf } from "../../units/certain.ts";
import type { Degrees } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine } from "../nouns/line.ts";
import { type BendNumber, type BendNumbers, bendNumbers } from "./blank.ts";
import { bendLines, pressedIn, type Tools } from "./tools.ts";

/** In air as the AIR functions reckon; a bottomed bend lies between that and the nose, by what the faces press out. */
export function bendOrBottomNumbers(line: BillLine, tools: Tools & Pick<Setup, "own">, work?: Working): BendNumbers {
  const inAir = bendNumbers(line, tools, work);
  const { die, punch: { nose } = {} } = tools;
  if (nose === undefined || pressedIn(line, tools) === 0) return inAir;
  const { thickness } = line;
  const at = new Map(
    [...inAir.at].map(([angle, air]): [Degrees, BendNumber] => {
      const { springback } = estimateAirBend(askedOver(line.material, thickness, angle, die, nose));
      const share = pressedShare(angle, springback, tools);
      if (share === 0) return [angle, air];
      step(work, "s", "share of the springback that the faces press out", share, "", PRESSED);
      const onNose = bendDeduction(
        { thickness, radius: nose, bendAngle: angle, k: K_DEFAULT.value, legs: "outside" },
        work,
      );
      const [radius, deduction] = [between(air.radius, nose, share), between(air.deduction, onNose, share)];
      return [
        angle,
        {
          radius: step(
            work,
            "R",
            "from the radius in air to the nose",
            radius,
            "mm",
            "R air + s (r - R air) (derived)",
          ),
          deduction: step(
            work,
            "BD",
            "the same of the deduction",
            deduction,
            "mm",
            "BD air + s (BD r - BD air) (derived)",
          ),
        },
      ];
    }),
  );
  // The sharpest stands first, as among the numbers of a bend in air.
  return { ...firstOf([...at.values()]), method: "bottoming", tryFirst: true, at };
}

const PRESSED = "(turn under load - turn that the faces allow) / springback, at most 1 (derived)";

/** Of the bend that needs the most; undefined for a flat part. */
export function forceOf(line: BillLine, tools: Setup): ForceCases | undefined {
  const forces = bendLines(line).map((bend) => bendOutcome(bend, tools).force);
  return forces.length === 0 ? undefined : forces.reduce((a, b) => (b.expected > a.expected ? b : a));
}
