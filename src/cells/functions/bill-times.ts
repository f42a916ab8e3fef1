import { EXAMPLE_WORKERS } from "../bill/example-shop.ts";
import { routeFinder, routes } from "../bill/routes-range.ts";
import { shopOf } from "../bill/shop-of.ts";
import { billTimes as times } from "../bill/times.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { workers } from "../tables/bill-tables.ts";

export const billTimes = defineFunction({
  name: "BILL.TIMES",
  question: "How long does every line take at every station?",
  parameters: { ...workers(), routes: routes(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.TIMES") },
  example: {
    formula: `=ROUND(INDEX(SHOP.BILL.TIMES(${EXAMPLE_WORKERS}),2,6)*60,0)`,
    answer: 655,
  },
  source: "speeds, strokes, gauge moves and handling of the workbook; distance over speed (derived)",
  calculate: ({ routes, ...tables }, { system, materials, work }) =>
    times(shopOf(tables, system, materials), routeFinder(routes), work),
});
