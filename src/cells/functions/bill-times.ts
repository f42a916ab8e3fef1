import { billTimes as answer } from "../bill/times.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billTimes = defineFunction({
  name: "BILL.TIMES",
  question: "How long does every line take at every station?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.TIMES") },
  example: {
    formula: `=ROUND(INDEX(SHOP.BILL.TIMES(${EXAMPLE_SHOP}),2,6)*60,0)`,
    answer: 657,
  },
  source:
    "speeds, strokes, gauge moves and handling of the workbook; distance over speed (derived); tools once a set, shared by brake minutes (common practice)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
