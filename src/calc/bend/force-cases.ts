import type { Material } from "../../data/materials/material.ts";
import { type Millimetres, megapascals, type Newtons } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { isSteel, tensileStrength } from "../material/strength.ts";
import { thickestSheet } from "../material/thickest.ts";
import { measuredStrength, STRIPS, stripWords } from "./strip-correction.ts";
import { continuedLangeForce } from "./tonnage.ts";

export interface ForceCases {
  /** Typical strength, nominal thickness. */
  readonly expected: Newtons;
  /** Strongest sheet to plan with, thickest within its tolerance, by the same formula. */
  readonly worst: Newtons;
}

/**
 * Two figures, never one: what a bend will probably need, and what it may need with a strong and thick sheet. Where the
 * shop's own strips measured a force the expected one goes with it; the worst only where they found a stronger sheet,
 * since a soft strip says nothing about the next delivery. By the handbook (Lange) and not by the mechanics of AIR.TONNAGE:
 * it needs the tensile strength alone, and of 33 finite-element solutions none needed more than 1.01 of it (most 0.75 to
 * 0.97, annealed stainless down to 0.57), so that a rating is never passed by a force that was reckoned too small.
 */
export const forceCases = (
  material: Material,
  thickness: Millimetres,
  bendLength: Millimetres,
  dieOpening: Millimetres,
  work?: Working,
): ForceCases =>
  work
    ? solve(material, thickness, bendLength, dieOpening, work)
    : casesKnown(material, thickness, bendLength, dieOpening);

const MOST_KNOWN = 16_384; // chosen: about two megabytes
/** Every check of a bill asks for the same bend again, with every punch and in every function. */
const casesKnown = remember(
  MOST_KNOWN,
  (material: Material, thickness: Millimetres, bendLength: Millimetres, dieOpening: Millimetres) =>
    solve(material, thickness, bendLength, dieOpening),
);

function solve(
  material: Material,
  thickness: Millimetres,
  bendLength: Millimetres,
  dieOpening: Millimetres,
  work?: Working,
): ForceCases {
  const bend = { thickness, bendLength, dieOpening, isSteel: isSteel(material) };
  const typical = tensileStrength(material, "typical", work);
  const measured = measuredStrength(material, bend);
  const factor = measured?.factor ?? 1;
  if (measured) step(work, "f_K", `strength, measured over predicted: ${stripWords(measured.row)}`, factor, "", STRIPS);
  const ordinary = { ...bend, tensile: megapascals(factor * typical) };
  const expected = continuedLangeForce(ordinary, work);
  step(work, "F expected", "expected force", expected, "N", "typical strength, nominal thickness; Lange, continued");
  const high = megapascals(
    Math.max(1, factor) * (material.tensileHigh ? tensileStrength(material, "high", work) : typical),
  );
  const worst = continuedLangeForce(
    { ...bend, thickness: thickestSheet(material, thickness, work), tensile: high },
    work,
  );
  step(work, "F worst", "worst case", worst, "N", "high strength, top of the thickness tolerance, same formula");
  return { expected, worst };
}
