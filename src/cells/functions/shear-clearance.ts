import { knifeGap } from "../../calc/shear/knife-gap.ts";
import { cite } from "../../data/fact.ts";
import { noAnswer } from "../../units/refusal.ts";
import { thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";

export const shearClearance = defineFunction({
  name: "SHEAR.CLEARANCE",
  question: "What blade gap (knife gap) does this sheet need?",
  parameters: { material: material(), thickness: thickness(), ...unitsAndData() },
  result: { kind: "length" },
  example: { formula: '=SHOP.SHEAR.CLEARANCE("A1008 CS",4.75,"mm")', answer: 0.285 },
  source: "Groover 5e eq. 19.2 and Table 19.1 (read); hot-rolled plate 5-8 % of the thickness (memory)",
  contract: true,
  calculate: ({ material, thickness }, { work }) => {
    const gap = material.knifeGap;
    if (!gap)
      throw noAnswer(
        "material",
        "one with a published blade gap",
        material.name,
        'ask the maker, or give "Knife gap" in the data range',
      );
    return knifeGap(thickness, gap.value, cite(gap), work);
  },
});
