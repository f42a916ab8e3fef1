import { billRoute as answer } from "../bill/route.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billRoute = defineFunction({
  name: "BILL.ROUTE",
  question: "Which lines go to the shear and which to the waterjet, to finish first or cheapest by a due time?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.ROUTE") },
  example: {
    formula: `=INDEX(SHOP.BILL.ROUTE(${EXAMPLE_SHOP}),2,2)`,
    answer: "shear",
  },
  source:
    "exact search: Lagrangian bound and dynamic programming over a growing core (Pisinger 1997, memory); proved or says so",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call)),
});
