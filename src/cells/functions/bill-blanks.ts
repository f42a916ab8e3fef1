import { billBlanks as blanks } from "../bill/blanks.ts";
import { EXAMPLE_BENDERS, EXAMPLE_RATES } from "../bill/example-shop.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { benders } from "../tables/bill-tables.ts";
import { rates } from "../tables/rates.ts";

export const billBlanks = defineFunction({
  name: "BILL.BLANKS",
  question: "How big is the blank of every line, how many, and which way must the grain run?",
  parameters: { ...benders(), rates: rates(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.BLANKS") },
  example: {
    formula: `=ROUND(INDEX(SHOP.BILL.BLANKS(${EXAMPLE_BENDERS},${EXAMPLE_RATES}),2,4),4)`,
    answer: 4.5292,
  },
  source: "flats at the radius the die gives (common practice; flat derived), allowances of the workbook",
  calculate: ({ bill, brake, dies, punches, rates }, { system, work }) =>
    blanks({ bill, brakes: brake, dies, punches }, rates, system, work),
});
