import { FAA_RADIUS, FAA_THICKNESS } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type Degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type KChoice, neutralAxis } from "./neutral-axis.ts";

/** One bend, the radius on its inside. */
export interface AxisBend {
  readonly thickness: Millimeters;
  readonly radius: Millimeters;
  readonly bendAngle: Degrees;
  readonly k: KChoice;
}

/**
 * Bend allowance: how much sheet goes into the bend, the arc at the neutral axis. BA = A (R + K t), A in radians,
 * 0 <= A <= 180. "FAA" is the handbook's own form, (0.01743 R + 0.0078 t) per degree: the same in inches and
 * millimeters, since it has no absolute length in it.
 * Source: Groover 5e eq. 19.6 (read); FAA-H-8083-31 / AC 65-15A (0.0078 read, 0.01743 memory).
 */
export function bendAllowance(
  { thickness, radius, bendAngle, k }: AxisBend,
  work?: Working,
  numberFrom?: string,
): Millimeters {
  if (k === "FAA") {
    const arc = (FAA_RADIUS.value * radius + FAA_THICKNESS.value * thickness) * bendAngle;
    return step(work, "BA", "bend allowance, arc in the bend", mm(arc), "mm", cite(FAA_RADIUS));
  }
  const share = neutralAxis(thickness, radius, k, work, numberFrom);
  const arc = radians(bendAngle) * (radius + share * thickness);
  return step(
    work,
    "BA",
    "bend allowance, arc at the neutral axis",
    mm(arc),
    "mm",
    "A (R + K t), Groover 5e eq. 19.6 (read)",
  );
}
