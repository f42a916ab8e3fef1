import { airBentRadius } from "../../calc/bend/air-bend.ts";
import { airParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const airRadius = defineFunction({
  name: "AIR.RADIUS",
  question: "What inside radius does this sheet get over this die, whatever the drawing says?",
  parameters: { ...airParameters(), units: units(), data: data() },
  result: { kind: "length" },
  example: { formula: '=SHOP.AIR.RADIUS("304",0.125,90,1,,"rule")', answer: 0.21 },
  source:
    "air-bend mechanics (derived; compared with finite elements, not with measured bends); rule: share of the opening (common practice, memory)",
  calculate: ({ material, thickness, bendAngle, method, ...tools }, { work }) =>
    airBentRadius(material, thickness, bendAngle, tools, method, work),
});
