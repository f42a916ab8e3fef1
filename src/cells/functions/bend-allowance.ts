import { bendAllowance as allowance } from "../../calc/bend/allowance.ts";
import { bendAngle } from "../parameters/angle.ts";
import { radius, thickness } from "../parameters/length.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const bendAllowance = defineFunction({
  name: "BEND.ALLOWANCE",
  question: "How much sheet goes into the bend?",
  parameters: { thickness: thickness(), radius: radius(), bendAngle: bendAngle(), k: k(), units: units() },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.BEND.ALLOWANCE(3.2,4.75,60,"Groover","mm"),2)', answer: 6.08 },
  source:
    "Groover 5e eq. 19.6 and example 19.2 (read); Machinery's Handbook and FAA-H-8083-31 by option; default k fitted, see DEVELOPERS.md",
  contract: true,
  calculate: (bend, { work }) => allowance(bend, work),
});
