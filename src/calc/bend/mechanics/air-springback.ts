import type { Degrees } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";
import { MECHANICS, recordBend } from "./record-bend.ts";

/** Angle (degrees) an air bend springs back when the punch lifts: loaded angle less final angle. Refuses as airBendToAngle does. */
export function airSpringback(input: AirBendInput, finalAngle: Degrees, work?: Working): Degrees {
  const bend = airBendToAngle(input, finalAngle);
  recordBend(input, bend, work);
  return step(work, "dA", "angle that springs back", bend.springback, "deg", MECHANICS);
}
