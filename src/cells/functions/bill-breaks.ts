import { planBreaks } from "../../bill/breaks/plan-breaks.ts";
import { type BillPlan, isQuoted, type QuotedLine } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import { nearest } from "../../units/nearest.ts";
import { noAnswer, Refusal, wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { quantities } from "../parameters/list.ts";
import { partName } from "../parameters/part-name.ts";
import { defineFunction } from "../record/record.ts";
import { headers, type SpillRow, spill } from "../record/spill-columns.ts";
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
    const rows = planBreaks(plan, line, quantities).map(([quantity, found]): SpillRow<"BILL.BREAKS"> => {
      if (found instanceof Refusal) return { Part: line.part, Quantity: quantity, Message: found.message };
      const { unitPrice, price, order, isInBill, isHeld } = found;
      return {
        Part: line.part,
        Quantity: quantity,
        "Unit price": unitPrice,
        Price: price,
        Order: order,
        Note: isInBill ? "as in the bill" : isHeld ? "held: never dearer each, never less in all, than fewer" : "",
      };
    });
    return spill("BILL.BREAKS", rows, call.system);
  },
});

/** The one line of this part. Throws a Refusal where there is none, or several, or it is not quoted. */
function quotedLine({ lines, shop: { system } }: BillPlan, part: string): QuotedLine {
  const found = lines.filter((line) => line.part.trim().toLowerCase() === part.toLowerCase());
  const [line] = found;
  if (!line) {
    const parts = lines.map((each) => each.part);
    throw noAnswer("part", "a part of the bill", showGiven(part), `nearest is ${showGiven(nearest(part, parts))}`);
  }
  if (found.length > 1)
    throw wrong("part", "a part that stands in the bill once", part, `${found.length} lines have it`);
  if (isQuoted(line)) return line;
  throw noAnswer("part", "a line that is quoted", showGiven(part), noQuoteSays(line.findings, system));
}
