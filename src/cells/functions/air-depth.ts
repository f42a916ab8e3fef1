import { airDepth as depth } from "../../calc/bend/mechanics/air-depth.ts";
import { mechanicsParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { correctedInput } from "../strip/corrected.ts";
import { corrections } from "../strip/correction-table.ts";

export const airDepth = defineFunction({
  name: "AIR.DEPTH",
  question: "How deep must the punch go, from pinching the sheet, for this angle? Go short on the first hit.",
  parameters: { ...mechanicsParameters(), correction: corrections(), units: units(), data: data() },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.DEPTH("A36",0.25,90,2,0.0625),2)', answer: 0.79 },
  source: "air-bend mechanics (derived; compared with finite elements, not with measured bends)",
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) =>
    depth(correctedInput({ material, thickness, tools, corrections: correction }, bendAngle, work), bendAngle, work),
});
