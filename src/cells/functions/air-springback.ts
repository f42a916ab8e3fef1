import { airSpringback as springback } from "../../calc/bend/mechanics/air-springback.ts";
import { mechanicsParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { correctedInput } from "../strip/corrected.ts";
import { corrections } from "../strip/correction-table.ts";

export const airSpringback = defineFunction({
  name: "AIR.SPRINGBACK",
  question: "By how many degrees does this bend open when the ram lifts?",
  parameters: { ...mechanicsParameters(), correction: corrections(), units: units(), data: data() },
  result: { kind: "angle" },
  example: { formula: '=ROUND(SHOP.AIR.SPRINGBACK("A36",0.25,90,2,0.0625),1)', answer: 2.5 },
  source: "air-bend mechanics (derived; compared with finite elements, not with measured bends)",
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) =>
    springback(
      correctedInput({ material, thickness, tools, corrections: correction }, bendAngle, work),
      bendAngle,
      work,
    ),
});
