import { acceptRadius } from "../../calc/bend/radius-acceptance.ts";
import { airRadiusBand } from "../../calc/bend/radius-band.ts";
import { degrees } from "../../units/quantity.ts";
import { airSheet, dieOpening, punchNose } from "../parameters/air.ts";
import { length } from "../parameters/length.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";

/** The bend that drawings call a radius for. */
const SQUARE = degrees(90);

export const airAccept = defineFunction({
  name: "AIR.ACCEPT",
  question:
    "Is the drawing's inside radius what the die gives: accept, measure the first piece, ask the customer, or take another tool?",
  parameters: {
    drawingRadius: length({ description: "Inside radius on the drawing", zero: true }),
    tolerance: length({ description: "Its tolerance, plus and minus", zero: true }),
    ...airSheet(),
    dieOpening: dieOpening(),
    punchNose: punchNose(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "row", columns: ["Verdict", "Sentence"] },
  example: { formula: '=INDEX(SHOP.AIR.ACCEPT(0.06,0.03,"A36",0.25,2),1,1)', answer: "ask" },
  source:
    "the whole band against the tolerance; radius over the die by rule, from edition 2026.2 by the best method; a callout of 0.060 to 0.25 in on a plain bracket is usually waived, in writing (common practice, memory)",
  calculate: ({ drawingRadius, tolerance, material, thickness, dieOpening, punchNose }, { system, work }) => {
    const asked = { material, thickness, bendAngle: SQUARE, tools: { dieOpening, punchNose } };
    const gives = airRadiusBand(asked, material.airMethod ?? "rule", work);
    const share = gives.expected / dieOpening;
    const { verdict, sentence } = acceptRadius({ radius: drawingRadius, tolerance }, gives, share, system, work);
    return [verdict, sentence];
  },
});
