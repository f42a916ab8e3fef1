import { bendDeduction as deduction } from "../../calc/bend/deduction.ts";
import { bendAngle } from "../parameters/angle.ts";
import { legs } from "../parameters/legs.ts";
import { radius, thickness } from "../parameters/length.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const bendDeduction = defineFunction({
  name: "BEND.DEDUCTION",
  question: "By how much is the flat shorter than the sum of the two legs?",
  parameters: {
    thickness: thickness(),
    radius: radius(),
    bendAngle: bendAngle(),
    k: k(),
    legs: legs(),
    units: units(),
  },
  result: { kind: "length" },
  example: { formula: "=ROUND(SHOP.BEND.DEDUCTION(0.125,0.125,90,0.33),4)", answer: 0.2389 },
  source: "2 SB - BA, geometry (derived); compensation value of DIN 6935 after Tabellenbuch Metall (read)",
  contract: true,
  calculate: (bend, { work }) => deduction(bend, work),
});
