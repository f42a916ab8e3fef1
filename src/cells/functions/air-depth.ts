import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { feasibleAirBend } from "../../calc/bend/solved-air-bend.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airDepth = defineFunction({
  name: "AIR.DEPTH",
  question: "How deep must the punch go, from pinching the sheet, for this angle? Go short on the first hit.",
  parameters: {
    ...mechanicsParameters(),
    correction: corrections(),
    punchAngle: punchAngle(),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.DEPTH("A36",0.25,90,2,0.0625),2)', answer: 0.82 },
  source: MECHANICS,
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) => {
    const { bend } = feasibleAirBend({ material: withStrips(material, correction), thickness, bendAngle, tools }, work);
    return step(work, "s", "punch travel from first contact", bend.stroke, "mm", MECHANICS);
  },
});
