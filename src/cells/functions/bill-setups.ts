import { billSetups as answer } from "../bill/setups.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billSetups = defineFunction({
  name: "BILL.SETUPS",
  question:
    "In which order is the brake set up, with which die and punch, how deep below the die's top, and which stops?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.SETUPS") },
  example: {
    formula: `=INDEX(SHOP.BILL.SETUPS(${EXAMPLE_CUTTERS}),2,5)`,
    answer: "V 2",
  },
  source:
    "order and stops as BEND.ORDER on the outlines given, else on plain tools after the tables (derived); fewest sets proved by branching (derived); depth by air-bend mechanics or geometry (derived), a first setting only",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
