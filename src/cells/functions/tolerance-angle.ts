import { angleTolerance } from "../../calc/tolerance/angle.ts";
import { ANGULAR_SOURCE, TOLERANCE_CLASSES } from "../../data/iso-2768.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const toleranceAngle = defineFunction({
  name: "TOLERANCE.ANGLE",
  question: "What general tolerance does an angle with this shorter leg have, plus and minus, in degrees?",
  parameters: {
    shorterLeg: length({ description: "Shorter leg of the angle" }),
    class: choice({ description: "Class: f fine, m medium, c coarse, v very coarse", words: TOLERANCE_CLASSES }),
    units: units(),
  },
  result: { kind: "angle" },
  example: { formula: '=SHOP.TOLERANCE.ANGLE(40,"m","mm")', answer: 0.5 },
  source: `${ANGULAR_SOURCE}; a plain brake holds about 1 degree (memory)`,
  contract: true,
  calculate: ({ shorterLeg, class: grade }, { work }) => angleTolerance(shorterLeg, grade, work),
});
