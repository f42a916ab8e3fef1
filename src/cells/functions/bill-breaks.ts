import { planBreaks } from "../../bill/breaks/plan-breaks.ts";
import { billBreaks as answer, quotedLine } from "../bill/breaks.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { quantities } from "../parameters/list.ts";
import { partName } from "../parameters/part-name.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billBreaks = defineFunction({
  name: "BILL.BREAKS",
  question: "What does one line cost by quantity, with the rest of the bill beside it?",
  parameters: {
    part: partName("Part of the line"),
    quantities: quantities('Quantities: a range, or text such as "10; 50; 100"'),
    ...billArguments(),
  },
  long: true,
  result: { kind: "table", columns: headers("BILL.BREAKS") },
  example: {
    formula: `=INDEX(SHOP.BILL.BREAKS("HB1","20; 50",${EXAMPLE_SHOP}),2,3)`,
    answer: 10.56,
  },
  source:
    "the bill planned with each quantity, what the order costs more given to the line; never dearer each nor less in all than fewer (derived)",
  calculate: ({ part, quantities, units: _, data: __, ...tables }, call) => {
    const plan = planOf(tables, call);
    const line = quotedLine(plan, part);
    return answer(line, planBreaks(plan, line, quantities), call.system);
  },
});
