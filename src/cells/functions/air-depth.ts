import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { feasibleAirBend } from "../../calc/bend/solved-air-bend.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { mm } from "../../units/quantity.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airDepth = defineFunction({
  name: "AIR.DEPTH",
  question:
    "How far must the punch travel once it touches the sheet? Subtract the thickness for its depth below the die's top; make the first hit short.",
  parameters: {
    ...mechanicsParameters(),
    correction: corrections(),
    punchAngle: punchAngle(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.DEPTH("A36",0.25,90,2,0.0625),2)', answer: 0.82 },
  source: MECHANICS,
  calculate: ({ material, thickness, bendAngle, correction, ...tools }, { work }) => {
    const { bend } = feasibleAirBend({ material: withStrips(material, correction), thickness, bendAngle, tools }, work);
    step(
      work,
      "s - t",
      "punch tip below the die's top, as BILL.SETUPS has it",
      mm(bend.stroke - thickness),
      "mm",
      "derived",
    );
    return step(work, "s", "punch travel from first contact", bend.stroke, "mm", MECHANICS);
  },
});
