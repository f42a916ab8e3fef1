import type { Degrees, Millimetres } from "../../../units/quantity.ts";
import { step, type Working } from "../../../units/working.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";
import { MECHANICS, recordBend } from "./record-bend.ts";

/** Punch travel (mm from first contact) that leaves a final angle after springback. Refuses as airBendToAngle does. */
export function airDepth(input: AirBendInput, finalAngle: Degrees, work?: Working): Millimetres {
  const bend = airBendToAngle(input, finalAngle);
  recordBend(input, bend, work);
  return step(work, "s", "punch travel from first contact", bend.stroke, "mm", MECHANICS);
}
