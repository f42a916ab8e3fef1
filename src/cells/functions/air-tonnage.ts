import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { feasibleAirBend, solvedAirBend } from "../../calc/bend/solved-air-bend.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { BOTTOMING_HIGH, BOTTOMING_LOW } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { newtons } from "../../units/quantity.ts";
import { step } from "../../units/working.ts";
import { airSheet, dieFaces, dieOpening, punchAngle, punchNose } from "../parameters/air.ts";
import { bendAngle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airTonnage = defineFunction({
  name: "AIR.TONNAGE",
  question: "How much force does this bend need at most on its way to the angle?",
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
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "force" },
  example: { formula: '=ROUND(SHOP.AIR.TONNAGE("A36",0.25,90,120,2,0.0625),0)', answer: 167 },
  source: `${MECHANICS}; bottoming 3-5 times the air-bend force (common practice)`,
  calculate: ({ material, thickness, bendAngle, bendLength, correction, at, ...tools }, { work }) => {
    const asked = { material: withStrips(material, correction), thickness, bendAngle, tools };
    const { bend } = at === "bottoming" ? solvedAirBend(asked, work) : feasibleAirBend(asked, work);
    const perLength = step(work, "f", "largest force per length on the way", bend.peakForce, "N/mm", MECHANICS);
    const air = newtons(perLength * bendLength);
    step(work, "L", "length of the bend line", bendLength, "mm", "given");
    if (at === "air") return step(work, "F", "largest force on the way to the angle", air, "N", "f L (derived)");
    step(work, "F air", "largest force of the air bend", air, "N", "f L (derived)");
    const most = newtons(BOTTOMING_HIGH.value * air);
    return step(
      work,
      "F",
      `to bottom it, upper end of ${BOTTOMING_LOW.value}-${BOTTOMING_HIGH.value} times`,
      most,
      "N",
      cite(BOTTOMING_HIGH),
    );
  },
});
