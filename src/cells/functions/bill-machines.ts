import { billMachines as answer } from "../bill/machines.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billMachines = defineBillFunction({
  name: "BILL.MACHINES",
  question: "What are the smallest machines that would do this bill, and how much of it can each of ours do?",
  example: { formula: `=INDEX(SHOP.BILL.MACHINES(${EXAMPLE_CUTTERS}),4,2)`, answer: 4 },
  source: "BEND.TONNAGE, SHEAR.MAXTHICKNESS turned round, lengths of bends and blanks (derived); the plates decide",
  answer: (plan, call) => answer(plan, call.work),
});
