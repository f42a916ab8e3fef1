import { type Degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Outside setback: from the mold-line corner back to the tangent point of the bend. SB = tan(A/2) (R + t), A the bend
 * angle, 0 <= A < 180; at 180 the mold lines never meet. Source: FAA-H-8083-31 vol. 1 ch. 4 (read).
 */
export const setback = (thickness: Millimeters, radius: Millimeters, bendAngle: Degrees, work?: Working): Millimeters =>
  step(
    work,
    "SB",
    "outside setback, mold-line corner to tangent point",
    mm(Math.tan(radians(bendAngle) / 2) * (radius + thickness)),
    "mm",
    "tan(A/2) (R + t), FAA-H-8083-31 vol. 1 ch. 4 (read)",
  );

/** Inside setback: from the inside corner back to the tangent point, tan(A/2) R. Source: geometry (derived). */
export const insideSetback = (radius: Millimeters, bendAngle: Degrees, work?: Working): Millimeters =>
  step(
    work,
    "SBi",
    "inside setback, inside corner to tangent point",
    mm(Math.tan(radians(bendAngle) / 2) * radius),
    "mm",
    "tan(A/2) R (derived)",
  );
