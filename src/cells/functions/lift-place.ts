import { placingLimit } from "../../calc/handling/placing-limit.ts";
import { COUPLINGS } from "../../data/niosh.ts";
import { type Hours, hours } from "../../units/quantity.ts";
import { angle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length } from "../parameters/length.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const WORKDAY = 8; // hours; the cautious column of the manual's table
const HALF_TURN = { from: 0, to: 180 };

export const liftPlace = defineFunction({
  name: "LIFT.PLACE",
  question:
    "How much may one person lift where the load must be put down with care: a blank on a gauge, a part on a rack?",
  parameters: {
    horizontal: length({ description: "Reach of the hands forward of the ankles, at the start" }),
    vertical: length({ description: "Height of the hands at the start", zero: true }),
    asymmetry: angle({ description: "Twist of the body at the start; 0 facing the load", rule: HALF_TURN }),
    endHorizontal: length({ description: "Reach of the hands where it is put down" }),
    endVertical: length({ description: "Height of the hands where it is put down", zero: true }),
    endAsymmetry: angle({ description: "Twist of the body where it is put down", rule: HALF_TURN }),
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
  example: { formula: '=ROUND(SHOP.LIFT.PLACE(10,30,0,20,40,0,0.2,"good",1),1)', answer: 23.6 },
  source:
    "NIOSH 94-110, revised lifting equation at origin and destination, the smaller (multipliers read, rule memory)",
  calculate: ({ hours: day, endHorizontal, endVertical, endAsymmetry, ...lift }, { work }) =>
    placingLimit(
      { ...lift, hours: hours(day) as Hours },
      { horizontal: endHorizontal, vertical: endVertical, asymmetry: endAsymmetry },
      work,
    ),
});
