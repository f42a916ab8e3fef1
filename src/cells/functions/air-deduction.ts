import { radiusAndAxis } from "../../calc/bend/air-axis.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { airNeutralAxis, airParameters, punchAngle } from "../parameters/air.ts";
import { legs } from "../parameters/legs.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airDeduction = defineFunction({
  name: "AIR.DEDUCTION",
  question: "What is the bend deduction for this sheet over this die?",
  parameters: {
    ...airParameters(),
    k: airNeutralAxis(),
    legs: legs(),
    correction: corrections(),
    punchAngle: punchAngle(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.DEDUCTION("A36",0.25,90,2,,"rule"),3)', answer: 0.471 },
  source: "radius by mechanics or rule; 2 SB - BA (derived), k of the solved bend or 0.42 (fitted on finite elements)",
  calculate: ({ material, thickness, bendAngle, method, k, legs, correction, ...tools }, { work }) => {
    const asked = { material: withStrips(material, correction), thickness, bendAngle, tools };
    const { axisSource, ...bend } = radiusAndAxis(asked, method, k, work);
    return bendDeduction({ thickness, bendAngle, legs, ...bend }, work, axisSource);
  },
});
