import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { feasibleAirBend } from "../../calc/bend/solved-air-bend.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airSpringback = defineFunction({
  name: "AIR.SPRINGBACK",
  question: "By how many degrees does this bend open when the ram lifts?",
  parameters: {
    ...mechanicsParameters(),
    correction: corrections(),
    punchAngle: punchAngle(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "angle" },
  example: { formula: '=ROUND(SHOP.AIR.SPRINGBACK("A36",0.25,90,2,0.0625),1)', answer: 2.5 },
  source: MECHANICS,
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) => {
    const { bend } = feasibleAirBend({ material: withStrips(material, correction), thickness, bendAngle, tools }, work);
    return step(work, "springback", "angle that the bend opens by", bend.springback, "deg", MECHANICS);
  },
});
