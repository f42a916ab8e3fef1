import { radiusAndAxis } from "../../calc/bend/air-axis.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { beyondTangent } from "../../calc/bend/legs.ts";
import { withStrips } from "../../calc/bend/strip-correction.ts";
import { flatFromDeductions, refuseOverlap } from "../../calc/flat/flat-length.ts";
import { entryOf } from "../../units/certain.ts";
import { airNeutralAxis, airSheet, airTools, punchAngle } from "../parameters/air.ts";
import { legs } from "../parameters/legs.ts";
import { lengths, signedBendAngles, turnPerBend } from "../parameters/list.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { corrections } from "../tables/corrections.ts";

export const airFlat = defineFunction({
  name: "AIR.FLAT",
  question: "How long is the flat blank of this part over this die?",
  parameters: {
    ...airSheet(),
    flanges: lengths('Flanges in order along the strip: a range, or text such as "2; 3.5; 2"'),
    bendAngles: signedBendAngles(
      "Bend angles between them, one fewer than flanges, or one for all; a minus (a bend down) changes no length",
    ),
    ...airTools(),
    k: airNeutralAxis(),
    legs: legs(),
    correction: corrections(),
    punchAngle: punchAngle(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.AIR.FLAT("A36",0.25,"2;3",90,2,,"rule"),2)', answer: 4.53 },
  source: "sum of flanges less bend deductions at the radius the die gives (derived; radius by mechanics or rule)",
  calculate: ({ material, thickness, flanges, bendAngles, method, k, legs, correction, ...tools }, { work }) => {
    const angles = turnPerBend(flanges, bendAngles);
    const sheet = { material: withStrips(material, correction), thickness, tools };
    const bends = new Map(
      [...new Set(angles)].map((bendAngle) => [bendAngle, radiusAndAxis({ ...sheet, bendAngle }, method, k, work)]),
    );
    refuseOverlap(
      flanges,
      angles.map((angle) => beyondTangent(thickness, entryOf(bends, angle).radius, angle, legs)),
    );
    // One working for each angle, however many bends have it.
    const deductionAt = new Map(
      [...bends].map(([bendAngle, { radius, k, axisSource }]) => [
        bendAngle,
        bendDeduction({ thickness, radius, bendAngle, k, legs }, work, axisSource),
      ]),
    );
    const deductions = angles.map((angle) => entryOf(deductionAt, angle));
    return flatFromDeductions(flanges, deductions, work);
  },
});
