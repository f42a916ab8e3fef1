import { planChanges } from "../../bill/changes/plan-changes.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { billChanges as answer } from "../bill/changes.ts";
import { BILL_EXAMPLE, EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

const { bill } = billArguments();

export const billChanges = defineFunction({
  name: "BILL.CHANGES",
  question: "What does this revision of the bill change in blanks, sheets, hours, price and dates?",
  parameters: { before: { ...bill, description: "The bill before the revision" }, ...billArguments() },
  long: true,
  result: { kind: "table", columns: headers("BILL.CHANGES") },
  example: {
    formula: `=INDEX(SHOP.BILL.CHANGES(${BILL_EXAMPLE.replace("20,4", "10,4")},${EXAMPLE_SHOP}),2,4)`,
    answer: 10,
  },
  source: "differences between two plans of one shop (derived)",
  calculate: ({ before, units: _, data: __, ...tables }, call) =>
    answer(planChanges(planBefore({ ...tables, bill: before }, call), planOf(tables, call)), call.system),
});

/** What is wrong with the earlier bill is said of its own argument. */
function planBefore(...given: Parameters<typeof planOf>): ReturnType<typeof planOf> {
  const found = refusalOr(() => planOf(...given));
  if (!(found instanceof Refusal)) return found;
  throw new Refusal(found.code, found.message.replace(/^bill\b/, "before"));
}
