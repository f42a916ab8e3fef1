import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { acceptRadius } from "../../calc/bend/radius-acceptance.ts";
import { airSheet, dieOpening, punchNose } from "../parameters/air.ts";
import { length } from "../parameters/length.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const airAccept = defineFunction({
  name: "AIR.ACCEPT",
  question: "Is the drawing's inside radius what the die gives: accept, ask the customer, or take another tool?",
  parameters: {
    drawingRadius: length({ description: "Inside radius on the drawing", zero: true }),
    tolerance: length({ description: "Its tolerance, plus and minus", zero: true }),
    ...airSheet(),
    dieOpening: dieOpening(),
    punchNose: punchNose(),
    units: units(),
    data: data(),
  },
  result: { kind: "row", columns: ["Verdict", "Sentence"] },
  example: { formula: '=INDEX(SHOP.AIR.ACCEPT(0.06,0.03,"A36",0.25,2),1,1)', answer: "ask" },
  source:
    "radius over the die by rule; a callout of 0.060 to 0.25 in on a plain bracket is usually waived, in writing (common practice, memory)",
  calculate: ({ drawingRadius, tolerance, material, dieOpening, punchNose }, { system, work }) => {
    const gives = airRadiusByRule(material, dieOpening, punchNose, work);
    const share = gives.expected / dieOpening;
    const { verdict, sentence } = acceptRadius(drawingRadius, tolerance, gives, share, system, work);
    return [verdict, sentence];
  },
});
