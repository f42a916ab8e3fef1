import type { Degrees, Millimetres } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";
import { MECHANICS, recordBend } from "./record-bend.ts";

/** Inside radius (mm) an air bend comes out with: of the circle tangent to both flanges, after springback. Refuses as airBendToAngle does. */
export function airRadius(input: AirBendInput, finalAngle: Degrees, work?: Working): Millimetres {
  const bend = airBendToAngle(input, finalAngle);
  recordBend(input, bend, work);
  return step(work, "R", "inside radius of the circle tangent to both flanges", bend.tangentRadius, "mm", MECHANICS);
}
