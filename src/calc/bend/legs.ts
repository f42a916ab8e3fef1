import { DIN_FLAT_ANGLE, DIN_TANGENT_ANGLE } from "../../data/bend-rules.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { insideSetback, setback } from "./setback.ts";

/**
 * Where a drawing measures a flange to. "outside": the mold-line corner; "inside": the inside corner; "tangent": the
 * tangent point; "DIN": the outer tangent for bends of 90 degrees and more, the mold-line corner below.
 */
export const LEGS = ["outside", "tangent", "inside", "DIN"] as const;
export type Legs = (typeof LEGS)[number];

/**
 * How much of a flange, measured as `legs` says, lies beyond the tangent point at one bend. Flange less this at each of
 * its bends is the flat part between the arcs. Source: geometry (derived); DIN 6935 after Tabellenbuch Metall (read).
 */
export function beyondTangent(
  thickness: Millimeters,
  radius: Millimeters,
  bendAngle: Degrees,
  legs: Legs,
  work?: Working,
): Millimeters {
  switch (legs) {
    case "tangent":
      return mm(0);
    case "inside":
      return insideSetback(radius, bendAngle, work);
    case "outside":
      return setback(thickness, radius, bendAngle, work);
    case "DIN":
      return atLeast(bendAngle, DIN_TANGENT_ANGLE.value)
        ? step(work, "SB", "outer tangent to tangent point", mm(radius + thickness), "mm", "r + s, DIN 6935 (read)")
        : setback(thickness, radius, bendAngle, work);
  }
}

/** DIN counts a bend of less than 15 degrees (included angle above 165) as flat: nothing is deducted. */
export const countsAsFlat = (bendAngle: Degrees, legs: Legs): boolean =>
  legs === "DIN" && !atLeast(bendAngle, DIN_FLAT_ANGLE.value);
