import { type Megapascals, type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Thickest sheet of another material that a guillotine takes, from its rating in a stated steel. At equal force the
 * raked blade gives t1 sqrt(S1/S2), parallel blades t1 S1/S2: the smaller rules, since the rake may be unknown. S1 is
 * what the rating stands for (ratedShearStrength), S2 the HIGH strength of the other; a softer sheet is never refused at
 * the rating. Never above the rated thickness itself: blade gap, hold-downs and knives are made for it. The plate decides. Source: geometry at equal force (derived).
 */
export function maximumShearThickness(
  rated: Millimeters,
  ratedStrength: Megapascals,
  otherHighStrength: Megapascals,
  work?: Working,
): Millimeters {
  step(work, "S1", "shear strength that the rating stands for", ratedStrength, "MPa", "material");
  step(work, "S2", "high shear strength of the sheet", otherHighStrength, "MPa", "material");
  const share = ratedStrength / otherHighStrength;
  const raked = step(
    work,
    "t raked",
    "equal force, raked blade",
    mm(rated * Math.sqrt(share)),
    "mm",
    "t1 sqrt(S1/S2) (derived)",
  );
  const parallel = step(
    work,
    "t parallel",
    "equal force, parallel blades",
    mm(rated * share),
    "mm",
    "t1 S1/S2 (derived)",
  );
  return step(
    work,
    "t max",
    "thickest sheet, never above the rating",
    mm(Math.min(raked, parallel, rated)),
    "mm",
    "the smallest of the three; the plate decides (derived)",
  );
}

/** The rating holds for the material it is stated in: nothing to convert. */
export const sameMaterial = (rated: Millimeters, work?: Working): Millimeters =>
  step(work, "t max", "the rating is stated in this material", rated, "mm", "the shear's plate");
