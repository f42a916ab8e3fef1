/** What comes of a bend that thin sheet reaches only by bottoming: the faces of the tools are met, and it is pressed on. */
import { BOTTOMING_HIGH, BOTTOMING_LOW } from "../../../data/bend-rules.ts";
import { cite } from "../../../data/fact.ts";
import { degrees, newtons } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import { type AirEstimate, estimateAirBend } from "../air-estimate.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";
import { bottoms } from "./loaded-angle.ts";

interface BendOutcome {
  readonly bottoms: boolean;
  readonly estimate: AirEstimate;
  readonly force: ForceCases;
}

/** Bent in air, or bottomed: 3 to 5 times the force, the radius of the nose, next to no springback (common practice). */
export function bendOutcome(line: BendLine, setup: Setup, work?: Working): BendOutcome {
  const bend = sharpestBend(line, setup);
  const estimate = estimateAirBend(bend);
  const force = forceCases(bend, line.bendLength, work);
  if (!bottoms(line, setup, estimate)) return { bottoms: false, estimate, force };
  const nose = setup.punch?.nose ?? estimate.radius;
  return {
    bottoms: true,
    estimate: { radius: nose, tightest: nose, springback: degrees(0), stroke: undefined },
    force: bottomingForce(force, work),
  };
}

/** 5 times the expected force to plan with; with the strongest sheet 3 times is common, and never less than that. */
export function bottomingForce({ expected, worst }: ForceCases, work?: Working): ForceCases {
  const most = newtons(BOTTOMING_HIGH.value * expected);
  const strong = newtons(Math.max(most, BOTTOMING_LOW.value * worst));
  return {
    expected: step(work, "F expected", "5 times the force in air: it bottoms", most, "N", cite(BOTTOMING_HIGH)),
    worst: step(work, "F worst", "at least 3 times the worst in air", strong, "N", cite(BOTTOMING_LOW)),
  };
}
