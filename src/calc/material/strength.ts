/** Strengths of a material in MPa, and which of its figures they are. Refuse (#N/A) what the material does not have. */
import { cite, type Fact } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { SHEAR_OF_TENSILE } from "../../data/shear-rules.ts";
import {
  type KilogramsPerCubicMillimeter,
  kilogramsPerCubicMillimeter,
  type Megapascals,
  megapascals,
} from "../../units/quantity.ts";
import { noAnswer, wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { refuseCutOnly } from "./cut-only.ts";
import { factValue } from "./fact-value.ts";

export const TENSILE_LEVELS = ["minimum", "typical", "high"] as const;
export type TensileLevel = (typeof TENSILE_LEVELS)[number];

const tensileFact = (material: Material, level: TensileLevel): Fact | undefined =>
  ({ minimum: material.tensileMinimum, typical: material.tensileTypical, high: material.tensileHigh })[level];

/** Tensile strength. A material whose specification sets no minimum has none: that is #N/A, not a guess. */
export function tensileStrength(material: Material, level: TensileLevel, work?: Working): Megapascals {
  refuseCutOnly(material);
  const fact = tensileFact(material, level);
  if (!fact)
    throw noAnswer(
      "tensile",
      `a strength that is known for ${material.name}`,
      `"${level}"`,
      level === "minimum" ? 'its specification sets none; use "typical", "high" or a number' : "give a number",
    );
  const what =
    level === "high" ? `tensile strength, high (${material.tensileHighIs ?? "given"})` : `tensile strength, ${level}`;
  return step(work, "UTS", what, megapascals(factValue(fact, "stress")), "MPa", cite(fact));
}

/** Shear strength as listed, else 0.7 of the typical tensile strength. */
export function shearStrength(material: Material, work?: Working): Megapascals {
  if (material.shearStrength)
    return step(work, "S", "shear strength", listed(material.shearStrength), "MPa", cite(material.shearStrength));
  return ofTensile(material, "typical", work);
}

/** For comparing materials: the lowest and the highest shear strength that the figures allow. */
export const lowShearStrength = (material: Material, work?: Working): Megapascals => {
  const level = material.tensileMinimum ? "minimum" : "typical";
  const low = ofTensile(material, level, work);
  return material.shearStrength ? megapascals(Math.min(low, listed(material.shearStrength))) : low;
};
/**
 * Shear strength that a guillotine's rating in this material stands for: that of the strongest sheet it covers, since the
 * shear cuts that one too. Where an edition does not say, the lowest that the figures allow.
 */
export const ratedShearStrength = (material: Material, work?: Working): Megapascals => {
  const fact = material.ratingCovers;
  if (!fact) return lowShearStrength(material, work);
  return step(work, "S covered", "shear strength that the rating covers", listed(fact), "MPa", cite(fact));
};
/** The shop's own shear strength is the sheet's, unless the shop says how high its tensile strength goes as well. */
export const highShearStrength = (material: Material, work?: Working): Megapascals => {
  const { shearStrength: own, tensileHigh } = material;
  if (own?.mark === "given" && tensileHigh?.mark !== "given") return shearStrength(material, work);
  const high = ofTensile(material, tensileHigh ? "high" : "typical", work);
  return own ? megapascals(Math.max(high, listed(own))) : high;
};

const listed = (fact: Fact): Megapascals => megapascals(factValue(fact, "stress"));

function ofTensile(material: Material, level: TensileLevel, work?: Working): Megapascals {
  const tensile = tensileStrength(material, level, work);
  return step(
    work,
    "S",
    "shear strength, 0.7 of the tensile strength",
    megapascals(SHEAR_OF_TENSILE.value * tensile),
    "MPa",
    cite(SHEAR_OF_TENSILE),
  );
}

export function density(material: Material, work?: Working): KilogramsPerCubicMillimeter {
  const fact = material.density;
  if (!fact) throw noAnswer("material", "one with a density", material.name, "add it to the data range");
  return step(work, "rho", "density", kilogramsPerCubicMillimeter(factValue(fact, "density")), "kg/mm^3", cite(fact));
}

/** Steels for which the force formulas are stated, told by their gauge series. */
export const isSteel = (material: Material): boolean =>
  material.gaugeSeries === "steel" || material.gaugeSeries === "galvanized" || material.gaugeSeries === "stainless";

export const typicalTensile = (material: Material): Megapascals | undefined =>
  material.tensileTypical && megapascals(factValue(material.tensileTypical, "stress"));

/** A strength given as a number, or a level of the material, which must then be there. */
export const chosenTensile = (
  material: Material | undefined,
  tensile: TensileLevel | Megapascals,
  work?: Working,
): Megapascals => {
  if (typeof tensile === "number") return step(work, "UTS", "tensile strength", tensile, "MPa", "given");
  if (!material) throw wrong("material", "given, unless tensile is a number", null);
  return tensileStrength(material, tensile, work);
};
