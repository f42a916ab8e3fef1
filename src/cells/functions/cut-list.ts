import { cutListRows } from "../bill/cut-list.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const cutList = defineFunction({
  name: "CUT.LIST",
  question: "In which order is every cut made at the shear?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("CUT.LIST") },
  example: {
    formula: `=INDEX(SHOP.CUT.LIST(${EXAMPLE_CUTTERS}),2,1)`,
    answer: 1,
  },
  source: "cuts in an order of few settings, lifts and stacks, every plan replayed cut by cut (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => cutListRows(planOf(tables, call)),
});
