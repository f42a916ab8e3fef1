import type { Material } from "../../data/materials/material.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { remember } from "../../units/remember.ts";
import { airShape } from "./air-shape.ts";
import { type AskedBend, solvedAirBend } from "./solved-air-bend.ts";
import { estimateSpringback } from "./springback-estimate.ts";
import type { Die } from "./tooling.ts";

export interface AirEstimate {
  /** Radius of the circle tangent to both flanges: what a gauge reads and a flat needs. undefined: not known. */
  readonly radius: Millimeters | undefined;
  /**
   * The radius that decides about cracks: for a temper that folds around the nose the tightest, else the gauged one.
   */
  readonly tightest: Millimeters | undefined;
  readonly springback: Degrees | undefined;
  /** Of the punch from first contact, under load; undefined where only the mechanics could say. */
  readonly stroke: Millimeters | undefined;
}

/** A bend over a die of the shop's table. */
export const askedOver = (
  material: Material,
  thickness: Millimeters,
  bendAngle: Degrees,
  die: Pick<Die, "opening" | "angle" | "shoulder">,
  nose: Millimeters | undefined,
): AskedBend => ({
  material,
  thickness,
  bendAngle,
  tools: { dieOpening: die.opening, dieAngle: die.angle, dieShoulder: die.shoulder, punchNose: nose },
});

const MOST_KNOWN = 8192; // chosen: about two megabytes: line after line bends the same sheet over the same die

/**
 * What one air bend over one die comes out like, as the checks need it: its radius as the flat of the line is made with
 * (the material's own method), springback and depth solved by the mechanics, else by rule where the material's hardening
 * is not known or the solver has no answer. A temper that hardens little folds around the nose: its tightest radius is
 * never taken wider than the nose, and a nose that is not known leaves it unknown.
 */
export const estimateAirBend = remember(MOST_KNOWN, (asked: AskedBend): AirEstimate => {
  const { material, thickness, bendAngle, tools } = asked;
  const shape = knownOrNot(() => airShape(asked, material.airMethod ?? "rule"));
  const solved = shape?.solved?.bend ?? knownOrNot(() => solvedAirBend(asked).bend);
  const radius = shape?.radius ?? solved?.tangentRadius;
  const nose = tools.punchNose;
  const folded = nose && mm(Math.min(nose, solved?.centerRadius ?? nose));
  return {
    radius,
    tightest: material.foldsRoundNose ? folded : radius,
    springback: solved?.springback ?? estimateSpringback(material, thickness, tools.dieOpening, bendAngle),
    stroke: solved?.stroke,
  };
});

/** A material without the figure is not the part's error: the check says that it does not know. */
export function knownOrNot<T>(answer: () => T): T | undefined {
  try {
    return answer();
  } catch (problem) {
    if (problem instanceof Refusal) return undefined;
    throw problem;
  }
}
