/**
 * One air bend with the shop's own correction laid over the mechanics: what every flat, radius, force and depth of the
 * same sheet over the same die is to be computed with. Without a row for it every digit is as if there were no strips.
 */

import type { Material } from "../../data/materials/material.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirMethod, AirTools } from "../bend/air-bend.ts";
import { type AirShape, airShape } from "../bend/air-shape.ts";
import type { AirBend } from "../bend/mechanics/air-bend.ts";
import type { KChoice } from "../bend/neutral-axis.ts";
import { feasibleAirBend, type SolvedAirBend, solvedAirBend } from "../bend/solved-air-bend.ts";
import { type AppliedCorrection, calibrated } from "./apply.ts";
import { correctionFor, correctionWords } from "./correction-for.ts";
import { correctedFraction } from "./shop-correction.ts";

export interface Sheet {
  readonly material: Material;
  readonly thickness: Millimetres;
  readonly tools: AirTools;
  readonly corrections: readonly AppliedCorrection[];
}

const STRIPS = "test strips (measured)";

const rowFor = (
  { material, thickness, tools, corrections }: Sheet,
  { regime }: AirBend,
): AppliedCorrection | undefined =>
  correctionFor(corrections, { material: material.name, thickness, dieOpening: tools.dieOpening, regime });

/** The bend solved for depth, force and springback, with the strength and springback that the shop's strips found. */
export function correctedBend(sheet: Sheet, bendAngle: Degrees, work?: Working, anyFace = false): SolvedAirBend {
  const { material, thickness, tools, corrections } = sheet;
  const row =
    corrections.length === 0 ? undefined : rowFor(sheet, solvedAirBend(material, thickness, bendAngle, tools).bend);
  if (row) step(work, "strips", "the shop's own correction", correctionWords(row), "", STRIPS);
  const solve = anyFace ? solvedAirBend : feasibleAirBend;
  return solve(material, thickness, bendAngle, tools, work, (input) => (row ? calibrated(input, row, work) : input));
}

/** Radius of the bend and the neutral axis on it: as the method says, with what the shop's strips found. */
export function radiusAndAxis(
  sheet: Sheet,
  bendAngle: Degrees,
  method: AirMethod,
  k: KChoice | undefined,
  work?: Working,
): { radius: Millimetres; k: KChoice; axisSource: string } {
  const { material, thickness, tools, corrections } = sheet;
  const shape = (chosen: AirMethod): AirShape => airShape(material, thickness, bendAngle, tools, chosen, work);
  if (corrections.length === 0) {
    const { radius, neutralAxis, axisSource } = shape(method);
    return k === undefined ? { radius, k: neutralAxis, axisSource } : { radius, k, axisSource: "given" };
  }
  if (method === "rule" || typeof k === "string")
    throw wrong(
      "correction",
      'left out unless method is "best" or "mechanics" and k a number or blank',
      "a range",
      "strips are compared with the mechanics",
    );
  // The shop's own strips are nearer to this bend than any compared one: with them the mechanics rules.
  const { radius, neutralAxis, axisSource, solved } = shape("mechanics");
  const row = rowFor(sheet, solved!.bend);
  const predicted = k ?? neutralAxis;
  if (!row) return { radius, k: predicted, axisSource: k === undefined ? axisSource : "given" };
  step(work, "strips", "the shop's own correction", correctionWords(row), "", STRIPS);
  step(work, "Kp", "neutral axis as predicted", predicted, "", k === undefined ? axisSource : "given");
  step(work, "c", "the shop's correction of it", correctedFraction(0, row, radius / thickness), "", STRIPS);
  return { radius, k: correctedFraction(predicted, row, radius / thickness), axisSource: `Kp + c, ${STRIPS}` };
}
