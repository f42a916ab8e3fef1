import { billRoute as answer } from "../bill/route.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billRoute = defineBillFunction({
  name: "BILL.ROUTE",
  question: "Which lines go to the shear and which to the waterjet, to finish first or cheapest by a due time?",
  example: { formula: `=INDEX(SHOP.BILL.ROUTE(${EXAMPLE_SHOP}),2,2)`, answer: "shear" },
  source:
    "exact search: Lagrangian bound and dynamic programming over a growing core (Pisinger 1997, memory); proved or says so",
  answer,
});
