import { blankWeight as weight } from "../../calc/flat/weight.ts";
import { density } from "../../calc/material/strength.ts";
import { length, thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { defineFunction } from "../record/record.ts";

export const blankWeight = defineFunction({
  name: "BLANK.WEIGHT",
  question: "What do these blanks weigh?",
  parameters: {
    material: material(),
    thickness: thickness(),
    length: length({ description: "Length of the blank" }),
    width: length({ description: "Width of the blank" }),
    quantity: number({ description: "How many", rule: { from: 0, to: 1e6, whole: true }, fallback: 1 }),
    ...unitsAndData(),
  },
  result: { kind: "mass" },
  example: { formula: '=SHOP.BLANK.WEIGHT("A36",0.25,96,48)', answer: 327.168 },
  source:
    "length x width x thickness x density (derived); steel 0.284 and aluminum 0.098 lb/in^3, Groover 5e Table 4.1 (read)",
  contract: true,
  calculate: ({ material, thickness, length, width, quantity }, { work }) =>
    weight({ thickness, length, width }, density(material, work), quantity, work),
});
