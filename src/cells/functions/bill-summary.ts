import { billSummary as answer } from "../bill/summary.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billSummary = defineFunction({
  name: "BILL.SUMMARY",
  question: "How many lines, pieces, pounds and sheets is it, what does it cost, and what is not quoted?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.SUMMARY") },
  example: {
    formula: `=INDEX(SHOP.BILL.SUMMARY(${EXAMPLE_SHOP}),3,2)`,
    answer: 1,
  },
  source: "sums over the quoted lines of the plan (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call)),
});
