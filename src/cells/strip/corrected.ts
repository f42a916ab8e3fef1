/** One air bend with the shop's own correction laid over the mechanics. */
import { type AirMethod, type AirTools, airBentRadius, mechanicsInput } from "../../calc/bend/air-bend.ts";
import type { AirBend } from "../../calc/bend/mechanics/air-bend.ts";
import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import type { KChoice } from "../../calc/bend/neutral-axis.ts";
import { type AppliedCorrection, calibrated } from "../../calc/strip/apply.ts";
import { correctedFraction } from "../../calc/strip/shop-correction.ts";
import type { Material } from "../../data/materials/material.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";

export interface Sheet {
  readonly material: Material;
  readonly thickness: Millimetres;
  readonly tools: AirTools;
  readonly corrections: readonly AppliedCorrection[];
}

/** An offset found in one contact says nothing about the other: only the row of this bend's own contact applies. */
const rowFor = ({ material, corrections }: Sheet, bend: AirBend): AppliedCorrection | undefined =>
  corrections.find((row) => row.material === material.name && row.regime === bend.regime);

/** What to solve for depth, force and springback. */
export function correctedInput(sheet: Sheet, bendAngle: Degrees, work?: Working): AirBendInput {
  const input = mechanicsInput(sheet.material, sheet.thickness, sheet.tools, work);
  if (sheet.corrections.length === 0) return input;
  const row = rowFor(sheet, airBendToAngle(input, bendAngle));
  return row ? calibrated(input, row, work) : input;
}

/** Radius of the bend and the neutral axis on it: by rule, or by mechanics with what the shop's strips found. */
export function radiusAndAxis(
  sheet: Sheet,
  bendAngle: Degrees,
  method: AirMethod,
  k: KChoice,
  work?: Working,
): { radius: Millimetres; k: KChoice } {
  const { material, thickness, tools, corrections } = sheet;
  if (corrections.length > 0 && (method === "rule" || typeof k !== "number"))
    throw wrong(
      "correction",
      'left out unless method is "mechanics" and k a number',
      "a range",
      "strips are compared with the mechanics",
    );
  const radius = airBentRadius(material, thickness, bendAngle, tools, method, work);
  if (corrections.length === 0 || typeof k !== "number") return { radius, k };
  const row = rowFor(sheet, airBendToAngle(mechanicsInput(material, thickness, tools), bendAngle));
  if (!row) return { radius, k };
  const fraction = correctedFraction(k, row, radius / thickness);
  return {
    radius,
    k: step(work, "K + c", "neutral axis with the shop's correction", fraction, "", "test strips (measured)"),
  };
}
