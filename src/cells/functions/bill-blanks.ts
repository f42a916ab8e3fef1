import { billBlanks as answer } from "../bill/blanks.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billBlanks = defineFunction({
  name: "BILL.BLANKS",
  question: "How big is the blank of every line, how many, and which way must the grain run?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.BLANKS") },
  example: {
    formula: `=ROUND(INDEX(SHOP.BILL.BLANKS(${EXAMPLE_CUTTERS}),2,4),4)`,
    answer: 4.5483,
  },
  source: "flats as AIR.FLAT makes them, with the shop's own strips (derived), allowances of the workbook",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
