import type { Material } from "../../data/materials/material.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { airRadiusByRule } from "./air-radius.ts";
import { estimateSpringback } from "./springback-estimate.ts";
import type { Die } from "./tooling.ts";

export interface AirEstimate {
  /** Radius of the circle tangent to both flanges: what a gauge reads and a flat needs. undefined: not known. */
  readonly radius: Millimetres | undefined;
  /** The tightest radius anywhere in the bend, which decides about cracks. */
  readonly tightest: Millimetres | undefined;
  readonly springback: Degrees | undefined;
}

/**
 * What one air bend over one die comes out like, as the checks need it. A temper that hardens little folds round the
 * nose, so its tightest radius is the nose, and a nose that is not known leaves it unknown; others take the radius of
 * the opening.
 */
export function estimateAirBend(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  die: Die,
  nose: Millimetres | undefined,
): AirEstimate {
  const band = knownOrNot(() => airRadiusByRule(material, die.opening, nose));
  return {
    radius: band?.expected,
    tightest: material.foldsRoundNose ? nose : band?.low,
    springback: estimateSpringback(material, thickness, die.opening, bendAngle),
  };
}

/** A material without the figure is not an error of the part: the check says that it does not know. */
export function knownOrNot<T>(answer: () => T): T | undefined {
  try {
    return answer();
  } catch (problem) {
    if (problem instanceof Refusal) return undefined;
    throw problem;
  }
}
