import { airForce } from "../../calc/bend/mechanics/air-force.ts";
import { newtons } from "../../units/quantity.ts";
import { step } from "../../units/working.ts";
import { airSheet, dieFaces, dieOpening, punchNose } from "../parameters/air.ts";
import { bendAngle } from "../parameters/angle.ts";
import { length } from "../parameters/length.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { correctedInput } from "../strip/corrected.ts";
import { corrections } from "../strip/correction-table.ts";

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
    units: units(),
    data: data(),
  },
  result: { kind: "force" },
  example: { formula: '=ROUND(SHOP.AIR.TONNAGE("A36",0.25,90,120,2,0.0625),0)', answer: 165 },
  source: "air-bend mechanics (derived; compared with finite elements, not with measured bends); before bottoming",
  calculate: ({ material, thickness, bendAngle, bendLength, correction, ...tools }, { work }) => {
    const perLength = airForce(
      correctedInput({ material, thickness, tools, corrections: correction }, bendAngle, work),
      bendAngle,
      work,
    );
    return step(
      work,
      "F",
      "largest force on the way to the angle",
      newtons(perLength * bendLength),
      "N",
      "force per length x length (derived)",
    );
  },
});
