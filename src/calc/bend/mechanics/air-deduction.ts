import type { Degrees, Millimetres } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import { NEUTRAL_FRACTION } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";
import { MECHANICS, recordBend } from "./record-bend.ts";

/**
 * Bend deduction (mm) of an air bend: outside flanges to the virtual sharp, less the flat length,
 * BD = 2 (R + t) tan(A/2) - A (R + K t) with A in radians (derived). Refuses as airBendToAngle does.
 */
export function airDeduction(input: AirBendInput, finalAngle: Degrees, work?: Working): Millimetres {
  const bend = airBendToAngle(input, finalAngle);
  recordBend(input, bend, work);
  step(work, "R", "inside radius of the circle tangent to both flanges", bend.tangentRadius, "mm", MECHANICS);
  step(work, "K", "neutral-axis fraction on that radius", NEUTRAL_FRACTION, "", "finite-element cases (fitted)");
  return step(work, "BD", "2 (R + t) tan(A/2) - A (R + K t)", bend.bendDeduction, "mm", "geometry (derived)");
}
