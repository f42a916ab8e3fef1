import { billCheck as answer } from "../bill/check.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billCheck = defineBillFunction({
  name: "BILL.CHECK",
  question: "What is wrong with every line, and what would better it?",
  example: { formula: `=INDEX(SHOP.BILL.CHECK(${EXAMPLE_CUTTERS}),2,2)`, answer: "clear" },
  source:
    "BEND.CHECK and SHEAR.CHECK on every line, bend order, stock, lifting; every fix tried by planning the line again; the plate decides",
  answer: (plan, call) => answer(plan, call.work),
});
