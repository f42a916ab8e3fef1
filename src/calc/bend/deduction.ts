import { type Degrees, type Millimetres, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { bendAllowance } from "./allowance.ts";
import { beyondTangent, countsAsFlat, type Legs } from "./legs.ts";
import type { KChoice } from "./neutral-axis.ts";

/**
 * Bend deduction: sum of the two legs less the flat length. BD = 2 x (part of a leg beyond the tangent point) - BA, so
 * 2 SB - BA for outside legs and -BA for tangent legs. 0 <= A < 180.
 * Source: geometry (derived); for legs "DIN" the compensation value v of DIN 6935 after Tabellenbuch Metall (read).
 */
export function bendDeduction(
  thickness: Millimetres,
  radius: Millimetres,
  bendAngle: Degrees,
  k: KChoice,
  legs: Legs,
  work?: Working,
  numberFrom?: string,
): Millimetres {
  if (countsAsFlat(bendAngle, legs))
    return step(
      work,
      "v",
      "compensation value, nearly flat bend",
      mm(0),
      "mm",
      "v = 0 for included angles above 165, DIN 6935 (read)",
    );
  const beyond = beyondTangent(thickness, radius, bendAngle, legs, work);
  const allowance = bendAllowance(thickness, radius, bendAngle, k, work, numberFrom);
  return step(
    work,
    "BD",
    "bend deduction, sum of legs less flat",
    mm(2 * beyond - allowance),
    "mm",
    "2 SB - BA (derived)",
  );
}
