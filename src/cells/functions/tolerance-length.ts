import { lengthTolerance } from "../../calc/tolerance/length.ts";
import { LINEAR_SOURCE, TOLERANCE_CLASSES } from "../../data/iso-2768.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const toleranceLength = defineFunction({
  name: "TOLERANCE.LENGTH",
  question: "What general tolerance does this length have, plus and minus?",
  parameters: {
    nominal: length({ description: "Nominal length on the drawing" }),
    class: choice({ description: "Class: f fine, m medium, c coarse, v very coarse", words: TOLERANCE_CLASSES }),
    units: units(),
  },
  result: { kind: "length" },
  example: { formula: '=SHOP.TOLERANCE.LENGTH(250,"m","mm")', answer: 0.5 },
  source: LINEAR_SOURCE,
  contract: true,
  calculate: ({ nominal, class: grade }, { work }) => lengthTolerance(nominal, grade, work),
});
