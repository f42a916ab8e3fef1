import { liftLimit as limit } from "../../calc/handling/lift-limit.ts";
import { COUPLINGS } from "../../data/niosh.ts";
import { type Hours, hours } from "../../units/quantity.ts";
import { angle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const WORKDAY = 8; // hours; the cautious column of the manual's table

export const liftLimit = defineFunction({
  name: "LIFT.LIMIT",
  question: "How much may one person lift here, with two hands?",
  parameters: {
    horizontal: length({ description: "Reach of the hands forward of the ankles" }),
    vertical: length({ description: "Height of the hands at the start", zero: true }),
    travel: length({ description: "Height the load is moved", zero: true }),
    asymmetry: angle({ description: "Twist of the body; 0 facing the load", rule: { from: 0, to: 180 } }),
    liftsPerMinute: number({ description: "Lifts a minute", rule: { from: 0, to: 60 } }),
    coupling: choice({ description: "How well the load can be gripped", words: COUPLINGS }),
    hours: number({
      description: "Hours of lifting a day",
      rule: { from: 0, above: true, to: WORKDAY },
      fallback: WORKDAY,
    }),
    units: units(),
  },
  result: { kind: "mass" },
  example: { formula: '=SHOP.LIFT.LIMIT(10,30,10,0,0.2,"good",1)', answer: 51 },
  source: "NIOSH 94-110, revised lifting equation (multipliers and limits read; coupling memory)",
  contract: true,
  calculate: ({ hours: day, ...lift }, { work }) => limit({ ...lift, hours: hours(day) as Hours }, work),
});
