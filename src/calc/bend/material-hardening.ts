import { cite } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Megapascals, megapascals } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { factValue } from "../material/fact-value.ts";
import { typicalTensile } from "../material/strength.ts";
import { type Hardening, hardeningFrom } from "./mechanics/hardening.ts";

const stress = (value: number): Megapascals => megapascals(value);

/**
 * Hardening law of a material: both figures where they are known; the strength from the typical tensile strength where
 * only the exponent is (K = UTS (e/n)^n, Considere, derived); else both from yield and tensile strength.
 * #N/A for a material with none of these.
 */
export function hardeningOf(material: Material, work?: Working): Hardening {
  const { hardeningStrength, hardeningExponent, yieldMinimum, modulus } = material;
  const tensile = typicalTensile(material);
  const record = (hardening: Hardening, source: string): Hardening => {
    step(work, "K, n", "hardening law: strength coefficient", hardening.strength, "MPa", source);
    return hardening;
  };
  if (hardeningExponent && hardeningStrength)
    return record(
      { strength: stress(factValue(hardeningStrength, "stress")), exponent: hardeningExponent.value },
      cite(hardeningStrength),
    );
  if (hardeningExponent && tensile !== undefined) {
    const n = hardeningExponent.value;
    return record(
      { strength: stress(tensile * (Math.E / n) ** n), exponent: n },
      `UTS (e/n)^n (derived), n from ${cite(hardeningExponent)}`,
    );
  }
  if (yieldMinimum && tensile !== undefined && modulus)
    return record(
      hardeningFrom({
        yield: stress(factValue(yieldMinimum, "stress")),
        tensile,
        modulus: stress(factValue(modulus, "stress")),
      }),
      "from yield and tensile strength (derived)",
    );
  throw noAnswer(
    "material",
    "one whose hardening is known",
    material.name,
    'give "Hardening exponent" in the data range, or use method "rule"',
  );
}
