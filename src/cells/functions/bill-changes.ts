import { planChanges } from "../../bill/changes/plan-changes.ts";
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
    answer(planChanges(planOf({ ...tables, bill: before }, call), planOf(tables, call)), call.system),
});
