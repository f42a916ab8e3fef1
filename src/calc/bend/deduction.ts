import { type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type AxisBend, bendAllowance } from "./allowance.ts";
import { beyondTangent, countsAsFlat, type Legs } from "./legs.ts";

/**
 * Bend deduction: sum of the two legs less the flat length. BD = 2 x (part of a leg beyond the tangent point) - BA, so
 * 2 SB - BA for outside legs and -BA for tangent legs. 0 <= A < 180.
 * Source: geometry (derived); for legs "DIN" the compensation value v of DIN 6935 after Tabellenbuch Metall (read).
 */
export function bendDeduction(
  { legs, ...bend }: AxisBend & { readonly legs: Legs },
  work?: Working,
  numberFrom?: string,
): Millimeters {
  const { thickness, radius, bendAngle } = bend;
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
  const allowance = bendAllowance(bend, work, numberFrom);
  return step(
    work,
    "BD",
    "bend deduction, sum of legs less flat",
    mm(2 * beyond - allowance),
    "mm",
    "2 SB - BA (derived)",
  );
}
