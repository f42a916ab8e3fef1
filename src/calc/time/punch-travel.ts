import { type Degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * How far the punch goes into the die from first touch to the bend angle, seen as a sheet without thickness or radius:
 * V/2 tan(A/2), so V/2 at 90 degrees. Geometry of an air bend (derived). Good for times and for a first setting, not for
 * an angle.
 */
export const punchTravel = (dieOpening: Millimeters, bendAngle: Degrees, work?: Working): Millimeters =>
  step(
    work,
    "y",
    "punch travel in the die",
    mm((dieOpening / 2) * Math.tan(radians(bendAngle) / 2)),
    "mm",
    "V/2 tan(A/2) (derived)",
  );
