import { billWhatIf } from "../bill/what-if.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billWhatif = defineFunction({
  name: "BILL.WHATIF",
  question: "If it must leave by then, which lines go into overtime, go outside, or break it?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.WHATIF") },
  example: {
    formula: `=INDEX(SHOP.BILL.WHATIF(${EXAMPLE_SHOP}),2,2)`,
    answer: "in time",
  },
  source: "loads in due order behind the queues, in the shifts of the calendar; vendor days as working days (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => billWhatIf(planOf(tables, call)),
});
