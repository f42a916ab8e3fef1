import { billSheets as answer } from "../bill/sheets.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSheets = defineBillFunction({
  name: "BILL.SHEETS",
  question: "Which sheets are to be bought, what do they cost and weigh, and who can lift them?",
  example: { formula: `=INDEX(SHOP.BILL.SHEETS(${EXAMPLE_CUTTERS}),2,7)`, answer: 1 },
  source: "sheets of the cut plan (derived)",
  answer: (plan, call) => answer(plan, call.work),
});
