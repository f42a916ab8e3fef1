import { billSummary as answer } from "../bill/summary.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSummary = defineBillFunction({
  name: "BILL.SUMMARY",
  question: "How many lines, pieces, pounds and sheets is it, what does it cost, and what is not quoted?",
  example: { formula: `=INDEX(SHOP.BILL.SUMMARY(${EXAMPLE_SHOP}),3,2)`, answer: 1 },
  source: "sums over the quoted lines of the plan (derived)",
  answer,
});
