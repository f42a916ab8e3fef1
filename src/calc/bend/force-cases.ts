import { PLATE_FROM_IN, PLATE_OVER, SHEET_OVER } from "../../data/bend-rules.ts";
import type { Material } from "../../data/materials/material.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Millimetres, mm, type Newtons, newtons } from "../../units/quantity.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { isSteel, tensileStrength } from "../material/strength.ts";
import { knownOrNot } from "./air-estimate.ts";
import { bendForce } from "./tonnage.ts";

export interface ForceCases {
  /** Typical strength, nominal thickness. */
  readonly expected: Newtons;
  /** Strongest sheet to plan with, thickest within its tolerance, by the same formula. */
  readonly worst: Newtons;
}

/** Two figures, never one: what a bend will probably need, and what it may need with a strong and thick sheet. */
export function forceCases(
  material: Material,
  thickness: Millimetres,
  bendLength: Millimetres,
  dieOpening: Millimetres,
  work?: Working,
): ForceCases {
  if (work) return solve(material, thickness, bendLength, dieOpening, work);
  // Every check of a bill asks for the same bend again, with every punch and in every function.
  const key = `${thickness} ${bendLength} ${dieOpening}`;
  let known = remembered.get(material);
  if (!known || known.size >= MOST_REMEMBERED) {
    known = new Map();
    remembered.set(material, known);
  }
  const found = known.get(key) ?? solve(material, thickness, bendLength, dieOpening);
  known.set(key, found);
  return found;
}

/** Answers by material: the same question always has the same answer, so that remembering it changes nothing but time. */
const remembered = new WeakMap<Material, Map<string, ForceCases>>();
const MOST_REMEMBERED = 16_384; // chosen: about two megabytes a material

function solve(
  material: Material,
  thickness: Millimetres,
  bendLength: Millimetres,
  dieOpening: Millimetres,
  work?: Working,
): ForceCases {
  const bend = { thickness, bendLength, dieOpening, isSteel: isSteel(material) };
  const typical = tensileStrength(material, "typical", work);
  const ordinary = { ...bend, tensile: typical };
  const byLange = knownOrNot(() => bendForce(ordinary, "Lange"));
  const expected = byLange ?? bendForce(ordinary, "Groover");
  step(work, "F expected", "expected force", expected, "N", "typical strength, nominal thickness; Lange, else Groover");
  const high = material.tensileHigh ? tensileStrength(material, "high", work) : typical;
  const isPlate = material.radiusRule?.table === "ASTM A6" && atLeast(thickness, PLATE_FROM_IN.value * MM_PER_INCH);
  const over = isPlate ? PLATE_OVER.value : SHEET_OVER.value;
  const thick = { ...bend, thickness: mm(thickness * over), tensile: high };
  const sameFormula = byLange === undefined ? undefined : knownOrNot(() => bendForce(thick, "Lange"));
  // Where the thick sheet leaves the formula's range the other one goes on; it must never say less for more.
  const worst = newtons(Math.max(expected, sameFormula ?? bendForce(thick, "Groover")));
  step(work, "F worst", "worst case", worst, "N", "high strength, top of the thickness tolerance, same formula");
  return { expected, worst };
}
