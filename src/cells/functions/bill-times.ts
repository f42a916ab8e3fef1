import { billTimes as answer } from "../bill/times.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billTimes = defineBillFunction({
  name: "BILL.TIMES",
  question: "How long does every line take at every station?",
  example: { formula: `=ROUND(INDEX(SHOP.BILL.TIMES(${EXAMPLE_SHOP}),2,6)*60,0)`, answer: 657 },
  source:
    "speeds, strokes, gauge moves and handling of the workbook; distance over speed (derived); tools once a set, shared by brake minutes (common practice)",
  answer: (plan, call) => answer(plan, call.work),
});
