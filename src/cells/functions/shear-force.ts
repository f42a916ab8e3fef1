import { shearStrength } from "../../calc/material/strength.ts";
import { shearForce as force } from "../../calc/shear/force.ts";
import type { Megapascals } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { angle } from "../parameters/angle.ts";
import { length, thickness } from "../parameters/length.ts";
import { materialUnlessGiven, unitsAndData } from "../parameters/material.ts";
import { quantity } from "../parameters/stress.ts";
import { defineFunction } from "../record/record.ts";

export const shearForce = defineFunction({
  name: "SHEAR.FORCE",
  question: "How much force does this straight cut need?",
  parameters: {
    material: materialUnlessGiven("Material by name; may be blank when shear_strength is a number"),
    thickness: thickness(),
    cutLength: length({ description: "Length of the cut" }),
    rakeAngle: angle({
      description: "Rake of the moving blade; blank or 0 for parallel blades",
      rule: { from: 0, to: 30 },
      fallback: undefined,
    }),
    shearStrength: quantity<Megapascals, undefined>({
      description: "Shear strength, instead of the material's",
      quantity: "stress",
      noun: "strength",
      fallback: undefined,
    }),
    ...unitsAndData(),
  },
  result: { kind: "force" },
  example: { formula: "=ROUND(SHOP.SHEAR.FORCE(,0.25,120,2,50),1)", answer: 22.4 },
  source: "S t L, Groover 5e eq. 19.3 (read); raked blade from the engaged triangle (derived)",
  contract: true,
  calculate: ({ material, thickness, cutLength, rakeAngle, shearStrength: given }, { work }) => {
    const strength = given ?? (material && shearStrength(material, work));
    if (strength === undefined) throw wrong("material", "given, unless shear_strength is a number", null);
    return force(thickness, cutLength, rakeAngle, strength, work);
  },
});
