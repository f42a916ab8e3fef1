import { GRAINS, minimumRadius } from "../../calc/bend/minimum-radius.ts";
import { typicalTensile } from "../../calc/material/strength.ts";
import { choice } from "../parameters/choice.ts";
import { thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";

export const bendMinradius = defineFunction({
  name: "BEND.MINRADIUS",
  question: "What is the least inside radius that is published for this sheet?",
  parameters: {
    material: material(),
    thickness: thickness(),
    grain: choice({
      description: 'Bend line "across" the rolling direction (the tables\' own condition) or "along" it',
      words: GRAINS,
      fallback: "across",
    }),
    ...unitsAndData(),
  },
  result: { kind: "length" },
  example: { formula: '=SHOP.BEND.MINRADIUS("6061-T6",0.125)', answer: 0.3125 },
  source:
    "Aluminum Association-type table (read in a reprint); ASTM A6 Table X4.2 (read in excerpt); DIN 6935:1975 (read as reprinted)",
  contract: true,
  calculate: ({ material, thickness, grain }, { work }) =>
    minimumRadius({ ...material, tensile: typicalTensile(material) }, thickness, grain, work),
});
