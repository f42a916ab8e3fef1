/** What a shop's own test strips change about a bend: of their material, thickness, die and contact, and of no other. */
import type { Material, Regime, StripCorrection } from "../../data/materials/material.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, megapascals, type Ratio } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirBendInput } from "./mechanics/air-bend-input.ts";

export const STRIPS = "test strips (measured)";

/** The material with those of the shop's rows that are of it; itself where there are none. */
export function withStrips(material: Material, rows: readonly StripCorrection[]): Material {
  const strips = rows.filter((row) => row.material === material.name);
  return strips.length === 0 ? material : { ...material, strips };
}

/** What decides which strips speak for a bend, beside its material. */
interface BentOver {
  readonly thickness: Millimeters;
  readonly dieOpening: Millimeters;
  readonly regime: Regime;
}

/**
 * The row of the shop's corrections that holds for a bend: of its contact, its thickness within the row's range, its die
 * the row's own. A row that names no die or range holds for all; one that names the die comes first.
 */
export function stripFor({ strips = [] }: Material, bend: BentOver): StripCorrection | undefined {
  const holding = strips.filter((row) => row.regime === bend.regime && holdsFor(row, bend));
  return holding.find(({ opening }) => opening !== undefined) ?? holding[0];
}

const holdsFor = (
  { opening, thicknessFrom, thicknessTo }: StripCorrection,
  { thickness, dieOpening }: Omit<BentOver, "regime">,
): boolean =>
  (opening === undefined || (atLeast(dieOpening, opening) && atMost(dieOpening, opening))) &&
  (thicknessFrom === undefined || atLeast(thickness, thicknessFrom)) &&
  (thicknessTo === undefined || atMost(thickness, thicknessTo));

/** Whether the shop has bent a strip of this sheet over this die: what is scattered elsewhere is measured here. */
export const hasStrip = ({ strips = [] }: Material, over: Omit<BentOver, "regime">): boolean =>
  strips.some((row) => holdsFor(row, over));

/** "A36, point contact, 0.225 in to 0.275 in over 2 in": how a working names the row. */
export function stripWords({ material, regime, opening, thicknessFrom, thicknessTo }: StripCorrection): string {
  const length = (value: Millimeters) => show(value, "length", "in", 3);
  const range =
    thicknessFrom === undefined || thicknessTo === undefined
      ? "any thickness"
      : `${length(thicknessFrom)} to ${length(thicknessTo)}`;
  return `${material}, ${regime} contact, ${range} over ${opening === undefined ? "any die" : length(opening)}`;
}

/** K as corrected for a bend of this ratio of radius to thickness. */
export const correctedFraction = (
  predicted: Ratio,
  { offset, slope }: Pick<StripCorrection, "offset" | "slope">,
  ratio: Ratio,
): Ratio => predicted + offset + (slope ? slope.perDecade * Math.log10(ratio / slope.about) : 0);

/**
 * Sheet as the shop's strips found it: strength as the measured force says, and the modulus so that springback, which
 * goes with strength over modulus, comes out as measured. The input itself where the strips measured neither.
 */
export function calibrated(
  input: AirBendInput,
  { strength = 1, springback }: StripCorrection,
  work?: Working,
): AirBendInput {
  const stiffness = springback === undefined ? 1 : strength / springback;
  step(work, "f_K", "strength, measured over predicted", strength, "", STRIPS);
  step(work, "f_E", "modulus that gives the measured springback, share of the catalogue's", stiffness, "", STRIPS);
  if (strength === 1 && stiffness === 1) return input;
  return {
    ...input,
    hardening: { ...input.hardening, strength: megapascals(input.hardening.strength * strength) },
    modulus: megapascals(input.modulus * stiffness),
  };
}

/**
 * How much stronger than the catalogue's the sheet of these strips is: the most that any contact found, since strength
 * does not depend on it. undefined where no strip of this thickness and die measured a force.
 */
export function measuredStrength(
  { strips = [] }: Material,
  bend: { readonly thickness: Millimeters; readonly dieOpening: Millimeters },
): { readonly factor: Ratio; readonly row: StripCorrection } | undefined {
  const found = strips.flatMap((row) =>
    row.strength !== undefined && holdsFor(row, bend) ? [{ factor: row.strength, row }] : [],
  );
  return found.length === 0 ? undefined : found.reduce((most, each) => (each.factor > most.factor ? each : most));
}
