import { billSheets as answer } from "../bill/sheets.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billSheets = defineFunction({
  name: "BILL.SHEETS",
  question: "Which sheets are to be bought, what do they cost and weigh, and who can lift them?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.SHEETS") },
  example: {
    formula: `=INDEX(SHOP.BILL.SHEETS(${EXAMPLE_CUTTERS}),2,7)`,
    answer: 1,
  },
  source: "sheets of the cut plan (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
