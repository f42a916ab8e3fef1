import { type Megapascals, type Millimeters, mm } from "../../units/quantity.ts";

/**
 * The least rated thickness, in the rated material, of a shear that takes this sheet: maximumShearThickness turned round,
 * t / min(S1/S2, sqrt(S1/S2), 1), with what the rating stands for and the high strength of the other (derived).
 */
export function neededRating(
  thickness: Millimeters,
  ratedStrength: Megapascals,
  otherHighStrength: Megapascals,
): Millimeters {
  const share = ratedStrength / otherHighStrength;
  return mm(thickness / Math.min(share, Math.sqrt(share), 1));
}
