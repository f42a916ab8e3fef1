import { SHOULDER_OF_OPENING } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/** Radius of the die's shoulders: as given, else a share of the opening, the same wherever a bend is solved (fitted). */
export const shoulderRadius = (
  given: Millimeters | undefined,
  dieOpening: Millimeters,
  work?: Working,
): Millimeters => {
  if (given !== undefined) return step(work, "rd", "die shoulder radius", given, "mm", "given");
  const taken = mm(SHOULDER_OF_OPENING.value * dieOpening);
  return step(work, "rd", "die shoulder radius, not given: taken as", taken, "mm", cite(SHOULDER_OF_OPENING));
};
