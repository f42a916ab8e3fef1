import { cutPlan as answer } from "../bill/cut-plan.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const cutPlan = defineFunction({
  name: "CUT.PLAN",
  question: "Which sheets are pulled, and what is cut from each?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("CUT.PLAN") },
  example: {
    formula: `=INDEX(SHOP.CUT.PLAN(${EXAMPLE_CUTTERS}),2,8)`,
    answer: 1,
  },
  source: "strip patterns and insertion within the shear's limits, every plan replayed cut by cut (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call)),
});
