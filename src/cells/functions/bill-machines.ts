import { billMachines as answer } from "../bill/machines.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billMachines = defineFunction({
  name: "BILL.MACHINES",
  question: "What are the smallest machines that would do this bill, and how much of it can each of ours do?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.MACHINES") },
  example: {
    formula: `=INDEX(SHOP.BILL.MACHINES(${EXAMPLE_CUTTERS}),4,2)`,
    answer: 4,
  },
  source: "BEND.TONNAGE, SHEAR.MAXTHICKNESS turned round, lengths of bends and blanks (derived); the plates decide",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call.work),
});
