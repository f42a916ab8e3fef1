import { mechanicsInput } from "../../calc/bend/air-bend.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { stripDeduction as measure, READING } from "../../calc/strip/strip-deduction.ts";
import { wrong } from "../../units/refusal.ts";
import { fromInternal } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { airSheet, dieFaces, dieOpening, punchNose } from "../parameters/air.ts";
import { bendAngle } from "../parameters/angle.ts";
import { length } from "../parameters/length.ts";
import { lengths } from "../parameters/list.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Deduction", "Predicted deduction", "K on the predicted radius", "Deviation of K", "Contact"] as const;

export const stripDeduction = defineFunction({
  name: "STRIP.DEDUCTION",
  question: "What bend deduction did this test strip really have, and what was predicted?",
  parameters: {
    ...airSheet(),
    blank: length({ description: "Length of the strip before bending" }),
    flanges: lengths('The two outside flanges, to the virtual sharp corner: "2.01; 3"'),
    bendAngle: bendAngle(),
    dieOpening: dieOpening(),
    punchNose: punchNose(),
    ...dieFaces(),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "row", columns: COLUMNS },
  example: { formula: '=ROUND(INDEX(SHOP.STRIP.DEDUCTION("A36",0.25,4.53,"2;3",90,2),1,1),2)', answer: 0.47 },
  source: "BD = A + B - L (measured); K from 2 (R + t) tan(A/2) - BD = A (R + K t) on the predicted radius (derived)",
  calculate: ({ material, thickness, blank, flanges, bendAngle, ...tools }, { system, work }) => {
    const [first, second] = flanges;
    if (first === undefined || second === undefined || flanges.length !== 2)
      throw wrong("flanges", "the two flanges of the strip", `${flanges.length} of them`);
    const predicted = airBendToAngle(mechanicsInput(material, thickness, tools, work), bendAngle);
    step(work, "R", "predicted inside radius, tangent to both flanges", predicted.tangentRadius, "mm", MECHANICS);
    step(work, "BD pred", "predicted bend deduction", predicted.bendDeduction, "mm", MECHANICS);
    const strip = {
      thickness,
      blank,
      flanges: [first, second] as const,
      bendAngle,
      tangentRadius: predicted.tangentRadius,
    };
    const { deduction, neutralFraction, deviation } = measure(strip, READING, work);
    const write = (value: number) => fromInternal(value, "length", system);
    return [write(deduction), write(predicted.bendDeduction), neutralFraction, deviation, predicted.regime];
  },
});
