import { bottomingForce } from "../../calc/bend/check/bottoming.ts";
import { forceCases } from "../../calc/bend/force-cases.ts";
import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { feasibleAirBend } from "../../calc/bend/solved-air-bend.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { BOTTOMING_HIGH } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { newtons } from "../../units/quantity.ts";
import { step } from "../../units/working.ts";
import { airSheet, dieFaces, dieOpening, punchAngle, punchNose } from "../parameters/air.ts";
import { bendAngle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airTonnage = defineFunction({
  name: "AIR.TONNAGE",
  question: "What is the most force this bend takes on its way to the angle?",
  parameters: {
    ...airSheet(),
    bendAngle: bendAngle(),
    bendLength: length({ description: "Length of the bend line" }),
    dieOpening: dieOpening(),
    punchNose: punchNose(),
    ...dieFaces(),
    correction: corrections(),
    punchAngle: punchAngle(),
    at: choice({
      description:
        '"air": the air bend; "bottoming": pressed onto the faces of the die, 3 to 5 times as much, the upper end',
      words: ["air", "bottoming"],
      fallback: "air",
    }),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "force" },
  example: { formula: '=ROUND(SHOP.AIR.TONNAGE("A36",0.25,90,120,2,0.0625),0)', answer: 167 },
  source: `${MECHANICS}; bottoming 5 times the force that BEND.CHECK takes, of 3-5 (common practice)`,
  calculate: ({ material, thickness, bendAngle, bendLength, correction, at, ...tools }, { work }) => {
    const asked = { material: withStrips(material, correction), thickness, bendAngle, tools };
    step(work, "L", "length of the bend line", bendLength, "mm", "given");
    // A multiple of the force that ratings are checked with, so that the bill says the same.
    if (at === "bottoming") {
      const { expected } = bottomingForce(forceCases(asked, bendLength, work), work);
      return step(work, "F", "to bottom it, upper end of 3 to 5 times", expected, "N", cite(BOTTOMING_HIGH));
    }
    const { bend } = feasibleAirBend(asked, work);
    const perLength = step(work, "f", "largest force per length on the way", bend.peakForce, "N/mm", MECHANICS);
    const most = newtons(perLength * bendLength);
    return step(work, "F", "largest force on the way to the angle", most, "N", "f L (derived)");
  },
});
