import { bendForce, FORCE_METHODS } from "../../calc/bend/tonnage.ts";
import { chosenTensile, isSteel } from "../../calc/material/strength.ts";
import { choice } from "../parameters/choice.ts";
import { length, thickness } from "../parameters/length.ts";
import { materialUnlessGiven, unitsAndData } from "../parameters/material.ts";
import { tensile } from "../parameters/stress.ts";
import { defineFunction } from "../record/record.ts";

export const bendTonnage = defineFunction({
  name: "BEND.TONNAGE",
  question: "How much force does this air bend need?",
  parameters: {
    material: materialUnlessGiven("Material by name; may be blank when tensile is a number"),
    thickness: thickness(),
    bendLength: length({ description: "Length of the bend line" }),
    dieOpening: length({ description: "Opening of the V die" }),
    method: choice({
      description:
        'Formula: "Lange" (factor 1 + 4t/V), "Groover" (1.33), "US shop" (575 rule) or the "highest" that applies',
      words: FORCE_METHODS,
      fallback: "Lange",
    }),
    tensile: tensile(),
    ...unitsAndData(),
  },
  result: { kind: "force" },
  example: { formula: '=ROUND(SHOP.BEND.TONNAGE("A36",0.25,120,2,"Groover","minimum"),1)', answer: 144.6 },
  source:
    "Groover 5e eq. 19.8 (read); Lange, Umformtechnik Bd. 3, after Oehler (read in restatement); US shop rule (common practice, memory)",
  contract: true,
  calculate: ({ material, thickness, bendLength, dieOpening, method, tensile }, { work }) => {
    const strength = chosenTensile(material, tensile, work);
    return bendForce(
      { thickness, bendLength, dieOpening, tensile: strength, isSteel: !material || isSteel(material) },
      method,
      work,
    );
  },
});
