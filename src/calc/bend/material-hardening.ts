import { cite } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Megapascals, megapascals } from "../../units/quantity.ts";
import { noAnswer, type Refusal } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { factValue } from "../material/fact-value.ts";
import { typicalTensile } from "../material/strength.ts";
import { type Hardening, hardeningFrom } from "./mechanics/hardening.ts";

const stress = (value: number): Megapascals => megapascals(value);

/**
 * Hardening law of a material: both figures where they are known; the strength from the typical tensile strength where
 * only the exponent is (K = UTS (e/n)^n, Considere, derived); else both from yield and tensile strength: typical with
 * typical where both are known, since a minimum yield beside a typical tensile reads n far too high.
 * #N/A for a material with none of these.
 */
export function hardeningOf(material: Material, work?: Working): Hardening {
  const { hardeningStrength, hardeningExponent, modulus, tensileTypical } = material;
  const yieldStrength = material.yieldTypical ?? material.yieldMinimum;
  const tensile = typicalTensile(material);
  const record = (hardening: Hardening, source: string, exponentSource = source): Hardening => {
    step(work, "Kh", "strength coefficient of the hardening law", hardening.strength, "MPa", source);
    step(work, "n", "hardening exponent", hardening.exponent, "", exponentSource);
    return hardening;
  };
  if (hardeningExponent && hardeningStrength)
    return record(
      { strength: stress(factValue(hardeningStrength, "stress")), exponent: hardeningExponent.value },
      cite(hardeningStrength),
      cite(hardeningExponent),
    );
  if (hardeningExponent && tensileTypical && tensile !== undefined) {
    const n = hardeningExponent.value;
    step(work, "UTS", "tensile strength, typical", tensile, "MPa", cite(tensileTypical));
    return record(
      { strength: stress(tensile * (Math.E / n) ** n), exponent: n },
      "UTS (e/n)^n, Considere (derived)",
      cite(hardeningExponent),
    );
  }
  if (yieldStrength && tensileTypical && tensile !== undefined && modulus) {
    step(work, "UTS", "tensile strength, typical", tensile, "MPa", cite(tensileTypical));
    step(work, "Y", "yield strength", factValue(yieldStrength, "stress"), "MPa", cite(yieldStrength));
    return record(
      hardeningFrom({
        yield: stress(factValue(yieldStrength, "stress")),
        tensile,
        modulus: stress(factValue(modulus, "stress")),
      }),
      "UTS (e/n)^n, Considere (derived)",
      "n ln(e (0.002 + Y/E)/n) = ln(Y/UTS) (derived)",
    );
  }
  throw unsolvable(material);
}

/** Columns of the data range that a material lacks for the mechanics; empty where it has them all. */
export function lacksForMechanics(material: Material): readonly string[] {
  const { modulus, poisson, tensileTypical, hardeningStrength, hardeningExponent } = material;
  const yieldStrength = material.yieldTypical ?? material.yieldMinimum;
  return [
    ...(modulus ? [] : ["modulus"]),
    ...(poisson ? [] : ["Poisson ratio"]),
    ...(tensileTypical || (hardeningExponent && hardeningStrength) ? [] : ["tensile typical"]),
    ...(hardeningExponent || yieldStrength ? [] : ["yield typical"]),
  ];
}

export const unsolvable = (material: Material): Refusal =>
  noAnswer(
    "material",
    "one whose bending is known",
    material.name,
    `give ${lacksForMechanics(material).join(", ")} in the data range`,
  );
