import { billLoadIn } from "../bill/load-in.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billLoadin = defineBillFunction({
  name: "BILL.LOADIN",
  question: "In which order are the parts loaded, in which stacks, and what stands on the labels?",
  example: { formula: `=INDEX(SHOP.BILL.LOADIN(${EXAMPLE_SHOP}),2,3)`, answer: 1 },
  source:
    "first needed, last loaded; heavy parts at the bottom (common practice); one person by LIFT.LIMIT or the shop's limit",
  answer: (plan, call) => billLoadIn(plan, call.work),
});
