import { EXAMPLE_BENDERS, EXAMPLE_RATES } from "../bill/example-shop.ts";
import { billLoadIn as loadIn } from "../bill/load-in.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { benders } from "../tables/bill-tables.ts";
import { rates } from "../tables/rates.ts";

export const billLoadin = defineFunction({
  name: "BILL.LOADIN",
  question: "In which order are the parts loaded, in which piles, and what stands on the labels?",
  parameters: { ...benders(), rates: rates(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.LOADIN") },
  example: {
    formula: `=INDEX(SHOP.BILL.LOADIN(${EXAMPLE_BENDERS},${EXAMPLE_RATES}),2,3)`,
    answer: 1,
  },
  source:
    "first needed, last loaded; heavy parts at the bottom (common practice); one person by LIFT.LIMIT or the shop's limit",
  calculate: ({ bill, brake, dies, punches, rates }, { system, work }) =>
    loadIn({ bill, brakes: brake, dies, punches }, rates, system, work),
});
