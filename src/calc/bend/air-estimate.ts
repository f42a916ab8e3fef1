import type { Material } from "../../data/materials/material.ts";
import { type Degrees, type Millimetres, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { mechanicsInput } from "./air-bend.ts";
import { airRadiusByRule } from "./air-radius.ts";
import { airBendToAngle } from "./mechanics/air-bend-to-angle.ts";
import { estimateSpringback } from "./springback-estimate.ts";
import type { Die } from "./tooling.ts";

export interface AirEstimate {
  /** Radius of the circle tangent to both flanges: what a gauge reads and a flat needs. undefined: not known. */
  readonly radius: Millimetres | undefined;
  /** The radius that decides about cracks: for a temper that folds round the nose the tightest, else the gauged one. */
  readonly tightest: Millimetres | undefined;
  readonly springback: Degrees | undefined;
  /** Of the punch from first contact, under load; undefined where only the mechanics could say. */
  readonly stroke: Millimetres | undefined;
}

/**
 * What one air bend over one die comes out like, as the checks need it: solved by the mechanics, else by rule where the
 * material's hardening is not known or the solver has no answer. A temper that hardens little folds round the nose:
 * its tightest radius is never taken wider than the nose, and a nose that is not known leaves it unknown.
 */
export function estimateAirBend(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  die: Die,
  nose: Millimetres | undefined,
): AirEstimate {
  // A bill bends the same sheet over the same die on line after line, and every check asks again.
  const key = `${thickness} ${bendAngle} ${die.opening} ${die.angle} ${die.shoulder} ${nose}`;
  let known = remembered.get(material);
  if (!known || known.size >= MOST_REMEMBERED) {
    known = new Map();
    remembered.set(material, known);
  }
  const found = known.get(key) ?? solve(material, thickness, bendAngle, die, nose);
  known.set(key, found);
  return found;
}

/** Answers by material: the same question always has the same answer, so that remembering it changes nothing but time. */
const remembered = new WeakMap<Material, Map<string, AirEstimate>>();
const MOST_REMEMBERED = 4096; // chosen: about a megabyte a material

function solve(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  die: Die,
  nose: Millimetres | undefined,
): AirEstimate {
  const tools = { dieOpening: die.opening, dieAngle: die.angle, dieShoulder: die.shoulder, punchNose: nose };
  const solved = knownOrNot(() => airBendToAngle(mechanicsInput(material, thickness, tools), bendAngle));
  // The radius the flat is made with: one radius for a line, wherever it is said.
  const band = knownOrNot(() => airRadiusByRule(material, die.opening, nose));
  const radius = band?.expected ?? solved?.tangentRadius;
  const folded = nose && mm(Math.min(nose, solved?.centreRadius ?? nose));
  return {
    radius,
    tightest: material.foldsRoundNose ? folded : radius,
    springback: solved?.springback ?? estimateSpringback(material, thickness, die.opening, bendAngle),
    stroke: solved?.stroke,
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
