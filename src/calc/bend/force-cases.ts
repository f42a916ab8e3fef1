import { type Megapascals, type Millimeters, megapascals, type Newtons } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { isSteel, tensileStrength } from "../material/strength.ts";
import { thickestSheet } from "../material/thickest.ts";
import type { AskedBend } from "./solved-air-bend.ts";
import { measuredStrength, STRIPS, stripWords } from "./strip-correction.ts";
import { continuedLangeForce } from "./tonnage.ts";
import { wrappedNose } from "./wrapped-nose.ts";

export interface ForceCases {
  /** Typical strength, nominal thickness. */
  readonly expected: Newtons;
  /** Strongest sheet to plan with, thickest within its tolerance, by the same formula. */
  readonly worst: Newtons;
}

/**
 * Two figures, never one: what a bend will probably need, and what it may need with a strong and thick sheet. The one
 * force that ratings are checked with: the handbook's (Lange), raised where the sheet wraps a big nose and the arm gets
 * short. Both need the tensile strength alone. Of 33 finite-element solutions none needed more than 1.01 of it (most
 * 0.75 to 0.97, annealed stainless down to 0.57). Where the shop's own strips measured a force the expected one goes with
 * it; the worst only where they found a stronger sheet, since a soft strip says nothing about the next delivery.
 */
export const forceCases = (asked: AskedBend, bendLength: Millimeters, work?: Working): ForceCases =>
  work ? solve(asked, bendLength, work) : casesKnown(asked, bendLength);

const MOST_KNOWN = 16_384; // chosen: about four megabytes
/** Every check of a bill asks for the same bend again, with every brake and in every function. */
const casesKnown = remember(MOST_KNOWN, (asked: AskedBend, bendLength: Millimeters) => solve(asked, bendLength));

function solve(asked: AskedBend, bendLength: Millimeters, work?: Working): ForceCases {
  const { material, thickness } = asked;
  const { dieOpening } = asked.tools;
  const typical = tensileStrength(material, "typical", work);
  const measured = measuredStrength(material, { thickness, dieOpening });
  const factor = measured?.factor ?? 1;
  if (measured) step(work, "f_K", `strength, measured over predicted: ${stripWords(measured.row)}`, factor, "", STRIPS);
  const forceOf = (sheet: Millimeters, tensile: Megapascals): Newtons => {
    const bend = { thickness: sheet, bendLength, dieOpening, tensile, isSteel: isSteel(material) };
    const handbook = continuedLangeForce(bend, work);
    const wrapped = wrappedNose(asked, sheet, tensile, bendLength).force;
    if (wrapped <= handbook) return handbook;
    return step(work, "F wrapped", "force of the sheet wrapped around nose and shoulders", wrapped, "N", WRAPPED);
  };
  const expected = forceOf(thickness, megapascals(factor * typical));
  step(work, "F expected", "expected force", expected, "N", "typical strength, nominal thickness");
  const high = megapascals(
    Math.max(1, factor) * (material.tensileHigh ? tensileStrength(material, "high", work) : typical),
  );
  const worst = forceOf(thickestSheet(material, thickness, work), high);
  step(work, "F worst", "worst case", worst, "N", "high strength, top of the thickness tolerance, same formula");
  return { expected, worst };
}

const WRAPPED = "2/sqrt(3) UTS t^2/2 cos a (cos a + mu sin a) L/(xc - (rp + rd + t) sin a) (derived)";
