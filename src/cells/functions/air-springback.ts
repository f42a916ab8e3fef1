import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { correctedBend } from "../../calc/strip/corrected-bend.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../strip/correction-table.ts";

export const airSpringback = defineFunction({
  name: "AIR.SPRINGBACK",
  question: "By how many degrees does this bend open when the ram lifts?",
  parameters: {
    ...mechanicsParameters(),
    correction: corrections(),
    punchAngle: punchAngle(),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "angle" },
  example: { formula: '=ROUND(SHOP.AIR.SPRINGBACK("A36",0.25,90,2,0.0625),1)', answer: 2.5 },
  source: MECHANICS,
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) => {
    const { bend } = correctedBend({ material, thickness, tools, corrections: correction }, bendAngle, work);
    return step(work, "springback", "angle that the bend opens by", bend.springback, "deg", MECHANICS);
  },
});
