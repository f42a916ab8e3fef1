import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { airParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";

export const airRadius = defineFunction({
  name: "AIR.RADIUS",
  question: "What inside radius does this sheet get over this die, whatever the drawing says?",
  parameters: { ...airParameters(), units: units(), data: data() },
  result: { kind: "length" },
  example: { formula: '=SHOP.AIR.RADIUS("304",0.125,90,1)', answer: 0.21 },
  source: "rule: share of the opening by material (common practice, memory); the punch nose where it is larger",
  calculate: ({ material, dieOpening, punchNose }, { work }) =>
    airRadiusByRule(material, dieOpening, punchNose, work).expected,
});
