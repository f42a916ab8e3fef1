import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { airParameters } from "../parameters/air.ts";
import { legs } from "../parameters/legs.ts";
import { data } from "../parameters/material.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";

export const airDeduction = defineFunction({
  name: "AIR.DEDUCTION",
  question: "What is the bend deduction for this sheet over this die?",
  parameters: { ...airParameters(), k: k(), legs: legs(), units: units(), data: data() },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.DEDUCTION("A36",0.25,90,2),3)', answer: 0.471 },
  source: "radius by rule (common practice, memory); 2 SB - BA (derived)",
  calculate: ({ material, thickness, bendAngle, dieOpening, punchNose, k, legs }, { work }) => {
    const { expected } = airRadiusByRule(material, dieOpening, punchNose, work);
    return bendDeduction(thickness, expected, bendAngle, k, legs, work);
  },
});
