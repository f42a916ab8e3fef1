import { billBlanks as answer } from "../bill/blanks.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billBlanks = defineBillFunction({
  name: "BILL.BLANKS",
  question: "How big is the blank of every line, how many, and which way must the grain run?",
  example: { formula: `=ROUND(INDEX(SHOP.BILL.BLANKS(${EXAMPLE_CUTTERS}),2,4),4)`, answer: 4.5483 },
  source: "flats as AIR.FLAT makes them, with the shop's own strips (derived), allowances of the workbook",
  answer: (plan, call) => answer(plan, call.work),
});
