import { mechanicsInput } from "../../calc/bend/air-bend.ts";
import { airSpringback as springback } from "../../calc/bend/mechanics/air-springback.ts";
import { mechanicsParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";

export const airSpringback = defineFunction({
  name: "AIR.SPRINGBACK",
  question: "By how many degrees does this bend open when the ram lifts?",
  parameters: { ...mechanicsParameters(), units: units(), data: data() },
  result: { kind: "angle" },
  example: { formula: '=ROUND(SHOP.AIR.SPRINGBACK("A36",0.25,90,2,0.0625),1)', answer: 2.5 },
  source: "air-bend mechanics (derived; compared with finite elements, not with measured bends)",
  calculate: ({ material, thickness, bendAngle, ...tools }, { work }) =>
    springback(mechanicsInput(material, thickness, tools, work), bendAngle, work),
});
