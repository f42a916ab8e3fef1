import type { Material } from "../../data/materials/material.ts";
import type { Millimetres, Newtons } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { isSteel, tensileStrength } from "../material/strength.ts";
import { thickestSheet } from "../material/thickest.ts";
import { continuedLangeForce } from "./tonnage.ts";

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
  const expected = continuedLangeForce(ordinary, work);
  step(work, "F expected", "expected force", expected, "N", "typical strength, nominal thickness; Lange, continued");
  const high = material.tensileHigh ? tensileStrength(material, "high", work) : typical;
  const worst = continuedLangeForce(
    { ...bend, thickness: thickestSheet(material, thickness, work), tensile: high },
    work,
  );
  step(work, "F worst", "worst case", worst, "N", "high strength, top of the thickness tolerance, same formula");
  return { expected, worst };
}
