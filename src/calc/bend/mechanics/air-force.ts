import type { Degrees, NewtonsPerMillimetre } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";
import { MECHANICS, recordBend } from "./record-bend.ts";

/** Largest ram force (N per mm of bend length) on the way to a final angle. Refuses as airBendToAngle does. */
export function airForce(input: AirBendInput, finalAngle: Degrees, work?: Working): NewtonsPerMillimetre {
  const bend = airBendToAngle(input, finalAngle);
  recordBend(input, bend, work);
  return step(
    work,
    "F",
    "largest ram force per length of bend, on the way to the angle",
    bend.peakForce,
    "N/mm",
    MECHANICS,
  );
}
