import { billWhatIf } from "../bill/what-if.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billWhatif = defineBillFunction({
  name: "BILL.WHATIF",
  question: "If it must leave by then, which lines go into overtime, go outside, or break it?",
  example: { formula: `=INDEX(SHOP.BILL.WHATIF(${EXAMPLE_SHOP}),2,2)`, answer: "in time" },
  source: "loads in due order behind the queues, in the shifts of the calendar; vendor days as working days (derived)",
  answer: billWhatIf,
});
