import { billSetups as answer } from "../bill/setups.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSetups = defineBillFunction({
  name: "BILL.SETUPS",
  question:
    "In which order is the brake set up, with which die and punch, how deep below the die's top, and which stops?",
  example: { formula: `=INDEX(SHOP.BILL.SETUPS(${EXAMPLE_CUTTERS}),2,5)`, answer: "V 2" },
  source:
    "order and stops as BEND.ORDER on the outlines given, else on plain tools after the tables (derived); fewest sets proved by branching (derived); depth by air-bend mechanics or geometry (derived), a first setting only",
  answer: (plan, call) => answer(plan, call.work),
});
