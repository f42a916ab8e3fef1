import { billCheck as answer } from "../bill/check.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billCheck = defineFunction({
  name: "BILL.CHECK",
  question: "What is wrong with every line, and what would better it?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.CHECK") },
  example: {
    formula: `=INDEX(SHOP.BILL.CHECK(${EXAMPLE_CUTTERS}),2,2)`,
    answer: "clear",
  },
  source:
    "BEND.CHECK and SHEAR.CHECK on every line, bend order, stock, lifting; every fix tried by planning the line again; the plate decides",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
