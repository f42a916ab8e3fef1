/** What comes of a bend that thin sheet reaches only by bottoming: the faces of the tools are met, and it is pressed on. */
import { BOTTOMING_HIGH, BOTTOMING_LOW } from "../../../data/bend-rules.ts";
import { cite } from "../../../data/fact.ts";
import { type Degrees, degrees, type Millimeters, mm, newtons } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import { type AirEstimate, estimateAirBend } from "../air-estimate.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";
import { bottoms } from "./loaded-angle.ts";

interface BendOutcome {
  /** Share of the springback that the faces press out: 0 in air. */
  readonly pressed: number;
  readonly estimate: AirEstimate;
  readonly force: ForceCases;
}

/** Bent in air, or bottomed: 3 to 5 times the force, however little is pressed (common practice). */
export function bendOutcome(line: BendLine, setup: Setup, work?: Working): BendOutcome {
  const bend = sharpestBend(line, setup);
  const estimate = estimateAirBend(bend);
  const force = forceCases(bend, line.bendLength, work);
  if (!bottoms(line, setup, estimate)) return { pressed: 0, estimate, force };
  const nose = setup.punch?.nose;
  const pressed = pressedShare(bend.bendAngle, estimate.springback, setup);
  return {
    pressed,
    estimate: {
      radius: nose && estimate.radius && between(estimate.radius, nose, pressed),
      tightest: nose ?? estimate.radius,
      springback: degrees((1 - pressed) * (estimate.springback ?? 0)),
      stroke: undefined,
    },
    force: bottomingForce(force, work),
  };
}

/**
 * The sheet turns no further than the faces, so what it may still spring back is what they stand past the angle: the rest
 * is pressed out. All of it where the tools have the very angle of the bend, next to none where they are more acute and
 * the sheet only just meets them (derived).
 */
export function pressedShare(
  angle: Degrees,
  springback: Degrees | undefined,
  { die, punch }: Pick<Setup, "die" | "punch">,
): number {
  if (springback === undefined || springback <= 0) return 0;
  const allowed = 180 - Math.max(die.angle, punch?.angle ?? 0);
  return Math.min(1, Math.max(0, (angle + springback - allowed) / springback));
}

/** From what it is in air to what it is pressed to the nose (derived): no step where a sheet begins to meet the faces. */
export const between = (inAir: Millimeters, onNose: Millimeters, pressed: number): Millimeters =>
  mm(inAir + pressed * (onNose - inAir));

/** 5 times the expected force to plan with; with the strongest sheet 3 times is common, and never less than that. */
export function bottomingForce({ expected, worst }: ForceCases, work?: Working): ForceCases {
  const most = newtons(BOTTOMING_HIGH.value * expected);
  const strong = newtons(Math.max(most, BOTTOMING_LOW.value * worst));
  return {
    expected: step(work, "F expected", "5 times the force in air: it bottoms", most, "N", cite(BOTTOMING_HIGH)),
    worst: step(work, "F worst", "at least 3 times the worst in air", strong, "N", cite(BOTTOMING_LOW)),
  };
}
