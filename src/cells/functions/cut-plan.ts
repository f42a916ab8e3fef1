import { cutPlan as answer } from "../bill/cut-plan.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const cutPlan = defineBillFunction({
  name: "CUT.PLAN",
  question: "Which sheets are pulled, and what is cut from each?",
  example: { formula: `=INDEX(SHOP.CUT.PLAN(${EXAMPLE_CUTTERS}),2,8)`, answer: 1 },
  source: "strip patterns and insertion within the shear's limits, every plan replayed cut by cut (derived)",
  answer,
});
