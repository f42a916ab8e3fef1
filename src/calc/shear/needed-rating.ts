import { type Megapascals, type Millimetres, mm } from "../../units/quantity.ts";

/**
 * The least rated thickness, in the rated material, of a shear that takes this sheet: maximumShearThickness turned round,
 * t / min(S1/S2, sqrt(S1/S2), 1), with the low strength of the rated and the high strength of the other (derived).
 */
export function neededRating(
  thickness: Millimetres,
  ratedLowStrength: Megapascals,
  otherHighStrength: Megapascals,
): Millimetres {
  const share = ratedLowStrength / otherHighStrength;
  return mm(thickness / Math.min(share, Math.sqrt(share), 1));
}
