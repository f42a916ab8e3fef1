import { setback } from "../../calc/bend/setback.ts";
import { bendAngle } from "../parameters/angle.ts";
import { radius, thickness } from "../parameters/length.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const bendSetback = defineFunction({
  name: "BEND.SETBACK",
  question: "How far is the tangent point of the bend from the outside corner?",
  parameters: { thickness: thickness(), radius: radius(), bendAngle: bendAngle(), units: units() },
  result: { kind: "length" },
  example: { formula: "=SHOP.BEND.SETBACK(0.04,0.16,90)", answer: 0.2 },
  source: "FAA-H-8083-31 vol. 1 ch. 4, U-channel example (read)",
  contract: true,
  calculate: ({ thickness, radius, bendAngle }, { work }) => setback(thickness, radius, bendAngle, work),
});
