import { feasibleAirShape } from "../../calc/bend/air-shape.ts";
import { airParameters, punchAngle } from "../parameters/air.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";

export const airRadius = defineFunction({
  name: "AIR.RADIUS",
  question: "What inside radius does this sheet get over this die, whatever the drawing says?",
  parameters: { ...airParameters(), punchAngle: punchAngle(), ...unitsAndData() },
  long: true,
  result: { kind: "length" },
  example: { formula: '=SHOP.AIR.RADIUS("304",0.125,90,1,,"rule")', answer: 0.21 },
  source:
    "air-bend mechanics (derived; compared with finite elements and published measured bends); rule: share of the opening (common practice, memory)",
  calculate: ({ material, thickness, bendAngle, method, ...tools }, { work }) =>
    feasibleAirShape({ material, thickness, bendAngle, tools }, method, work).radius,
});
