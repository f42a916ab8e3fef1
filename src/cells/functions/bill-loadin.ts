import { billLoadIn } from "../bill/load-in.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billLoadin = defineFunction({
  name: "BILL.LOADIN",
  question: "In which order are the parts loaded, in which stacks, and what stands on the labels?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.LOADIN") },
  example: {
    formula: `=INDEX(SHOP.BILL.LOADIN(${EXAMPLE_SHOP}),2,3)`,
    answer: 1,
  },
  source:
    "first needed, last loaded; heavy parts at the bottom (common practice); one person by LIFT.LIMIT or the shop's limit",
  calculate: ({ units: _, data: __, ...tables }, call) => billLoadIn(planOf(tables, call), call.work),
});
