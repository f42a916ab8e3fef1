import { cite } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { refuseCutOnly } from "../material/cut-only.ts";
import { lacksForMechanics } from "./material-hardening.ts";

export interface RadiusBand {
  readonly low: Millimeters;
  readonly expected: Millimeters;
  readonly high: Millimeters;
}

export const OPENING_SHARE = "radius as a share of the opening, middle of the two";

/**
 * Inside radius of an air bend by the shop rule: a share of the die opening, whatever the drawing says; a larger punch
 * nose rules. 60-ksi steel 5/32 to 0.16, stainless 0.20-0.22, soft aluminum 0.12-0.15 (common practice, memory). The
 * expected radius is the middle of the two shares. #N/A for a material without a share.
 */
export function airRadiusByRule(
  material: Material,
  dieOpening: Millimeters,
  punchNose: Millimeters | undefined,
  work?: Working,
): RadiusBand {
  refuseCutOnly(material);
  const { airRadiusLow: low, airRadiusHigh: high } = material;
  if (!low || !high) {
    const lacks = lacksForMechanics(material);
    throw noAnswer(
      "material",
      "one with a share of the opening for its air-bent radius",
      material.name,
      `give air radius low and air radius high in the data range, or ${lacks.length === 0 ? 'use method "mechanics"' : `for the mechanics ${lacks.join(", ")}`}`,
    );
  }
  const share = step(work, "q", OPENING_SHARE, (low.value + high.value) / 2, "", cite(low));
  const natural = step(work, "q V", "radius the opening gives", mm(share * dieOpening), "mm", cite(low));
  const nose = punchNose ?? mm(0);
  const atLeastNose = (value: number) => mm(Math.max(value, nose));
  return {
    low: atLeastNose(low.value * dieOpening),
    expected: step(
      work,
      "R",
      "inside radius, the punch nose where it is larger",
      atLeastNose(natural),
      "mm",
      "common practice",
    ),
    high: atLeastNose(high.value * dieOpening),
  };
}
