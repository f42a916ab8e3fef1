import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { flatLength } from "../../calc/flat/flat-length.ts";
import { airSheet, airTools } from "../parameters/air.ts";
import { legs } from "../parameters/legs.ts";
import { anglePerBend, bendAngles, lengths } from "../parameters/list.ts";
import { data } from "../parameters/material.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";

export const airFlat = defineFunction({
  name: "AIR.FLAT",
  question: "How long is the flat blank of this part over this die?",
  parameters: {
    ...airSheet(),
    flanges: lengths('Flanges in order along the strip: a range, or text such as "2; 3.5; 2"'),
    bendAngles: bendAngles("Bend angles between them, one fewer than flanges, or one for all"),
    ...airTools(),
    k: k(),
    legs: legs(),
    units: units(),
    data: data(),
  },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.FLAT("A36",0.25,"2;3",90,2),2)', answer: 4.53 },
  source: "sum of flanges less bend deductions at the radius the die gives (derived; radius by rule, common practice)",
  calculate: ({ material, thickness, flanges, bendAngles, dieOpening, punchNose, k, legs }, { work }) => {
    const { expected } = airRadiusByRule(material, dieOpening, punchNose, work);
    return flatLength(flanges, anglePerBend(flanges, bendAngles), thickness, expected, k, legs, work);
  },
});
