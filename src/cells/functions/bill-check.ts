import { billCheck as check } from "../bill/check.ts";
import { EXAMPLE_CUTTERS } from "../bill/example-shop.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { cutters } from "../tables/bill-tables.ts";
import { rates } from "../tables/rates.ts";

export const billCheck = defineFunction({
  name: "BILL.CHECK",
  question: "What is wrong with every line: bends, cut, drawing radius and tolerance?",
  parameters: { ...cutters(), rates: rates(true), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.CHECK") },
  example: {
    formula: `=INDEX(SHOP.BILL.CHECK(${EXAMPLE_CUTTERS},""),2,2)`,
    answer: "check",
  },
  source:
    "BEND.CHECK and SHEAR.CHECK on every line; tolerance stack of edge, bends and angle (memory); the plate decides",
  calculate: ({ bill, brake, dies, punches, shear, waterjet, rates }, { system, materials, work }) =>
    check({ bill, brakes: brake, dies, punches, shears: shear, waterjets: waterjet, rates, materials, system }, work),
});
