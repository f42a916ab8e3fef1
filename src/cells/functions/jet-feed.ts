import { cuttingFeed } from "../../calc/jet/cutting-feed.ts";
import { QUALITY, QUALITY_WORDS } from "../../data/jet-rules.ts";
import type { GramsPerMinute, Megapascals } from "../../units/quantity.ts";
import { length, thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { quantity } from "../parameters/stress.ts";
import { defineFunction } from "../record/record.ts";

export const jetFeed = defineFunction({
  name: "JET.FEED",
  question: "How fast does the abrasive waterjet cut this on a straight line?",
  parameters: {
    material: material(),
    thickness: thickness(
      "Thickness, or a gauge of the material; below 3 mm (1/8 in) the formula is too fast: time a cut of your own",
    ),
    quality: number({
      description: `${QUALITY_WORDS.map((words, i) => `${i + QUALITY.from} ${words}`).join(", ")}; brackets are usually cut at 3`,
      rule: { from: QUALITY.from, to: QUALITY.to },
    }),
    pressure: quantity<Megapascals>({
      description: "Water pressure, ksi or MPa",
      quantity: "stress",
      noun: "pressure",
    }),
    orifice: length({ description: "Orifice diameter" }),
    abrasiveRate: quantity<GramsPerMinute>({
      description: "Abrasive flow, lb/min or g/min",
      quantity: "massFlow",
      noun: "abrasive rate",
    }),
    nozzleDiameter: length({ description: "Bore of the mixing tube" }),
    ...unitsAndData(),
  },
  result: { kind: "feed" },
  example: { formula: '=ROUND(SHOP.JET.FEED("A36",0.5,1,50,0.014,0.75,0.04),1)', answer: 14.6 },
  source:
    "Zeng & Kim, 7th American Water Jet Conference 1993 (memory); about +-25 % without a timed cut, and too fast in sheet below 3 mm: the shop's own timed cut comes first",
  contract: true,
  calculate: ({ material, units: _, data: __, ...cut }, { work }) => cuttingFeed(material, cut, undefined, work),
});
