import { EXAMPLE_BENDERS, EXAMPLE_RATES, EXAMPLE_STOCK } from "../bill/example-shop.ts";
import { plan } from "../bill/plan-range.ts";
import { billSheets as sheets } from "../bill/sheets.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { benders } from "../tables/bill-tables.ts";
import { rates } from "../tables/rates.ts";
import { stock } from "../tables/stock.ts";

export const billSheets = defineFunction({
  name: "BILL.SHEETS",
  question: "Which sheets are to be bought, what do they cost and weigh, and who can lift them?",
  parameters: { ...benders(), stock: stock(), rates: rates(), plan: plan(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.SHEETS") },
  example: {
    formula: `=INDEX(SHOP.BILL.SHEETS(${EXAMPLE_BENDERS},${EXAMPLE_STOCK},${EXAMPLE_RATES}),2,6)`,
    answer: 1,
  },
  source: "sheets of the cut plan, else area over the stated yield (derived)",
  calculate: ({ bill, brake, dies, punches, stock, rates, plan }, { system, work }) =>
    sheets({ bill, brakes: brake, dies, punches, stock, rates, plan, system }, work),
});
