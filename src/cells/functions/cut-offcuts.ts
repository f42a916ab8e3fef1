import { cutOffcuts as answer } from "../bill/cut-offcuts.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const cutOffcuts = defineFunction({
  name: "CUT.OFFCUTS",
  question: "What goes back on the rack, as rows for the table of sheets?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("CUT.OFFCUTS") },
  example: {
    formula: `=INDEX(SHOP.CUT.OFFCUTS(${EXAMPLE_CUTTERS}),2,9)`,
    answer: "yes",
  },
  source: "left-overs of the cut plan that are worth keeping, priced at their share of the sheet (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call)),
});
