import {
  type Degrees,
  type Megapascals,
  type Millimeters,
  mm,
  type Newtons,
  newtons,
  radians,
} from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Force to shear a sheet along a straight cut. Parallel blades (no rake): F = S t L. Raked blade: only the triangle
 * t/tan(rake) long is in the cut, F = S t^2 / (2 tan rake), whatever the length; a piece shorter than the triangle has
 * area t L - L^2 tan(rake)/2. An upper estimate. Never compare it with a guillotine's rating: that is a thickness in a
 * stated steel (SHEAR.MAXTHICKNESS). Without a rake, 10 ft of 1/4 in give 750 tons: true, and absurd for a guillotine.
 * Source: F = S t L Groover 5e eq. 19.3 (read); the raked form is geometry (derived).
 */
export function shearForce(
  thickness: Millimeters,
  cutLength: Millimeters,
  rake: Degrees | undefined,
  shearStrength: Megapascals,
  work?: Working,
): Newtons {
  step(work, "S", "shear strength used", shearStrength, "MPa", "given or from the material");
  if (rake === undefined || rake === 0)
    return step(
      work,
      "F",
      "shear force, parallel blades",
      newtons(shearStrength * thickness * cutLength),
      "N",
      "S t L, Groover 5e (read); no rake given",
    );
  const slope = Math.tan(radians(rake));
  const engaged = step(
    work,
    "Le",
    "length of blade in the cut at once",
    mm(thickness / slope),
    "mm",
    "t / tan(rake) (derived)",
  );
  const area =
    cutLength >= engaged ? thickness ** 2 / (2 * slope) : thickness * cutLength - (cutLength ** 2 * slope) / 2;
  step(
    work,
    "area",
    "sheared area at once",
    area,
    "mm2",
    cutLength >= engaged ? "t^2 / (2 tan rake) (derived)" : "t L - L^2 tan(rake) / 2 (derived)",
  );
  return step(work, "F", "shear force, raked blade", newtons(shearStrength * area), "N", "S x area (derived)");
}
