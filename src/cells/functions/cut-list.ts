import { cutListRows } from "../bill/cut-list.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const cutList = defineBillFunction({
  name: "CUT.LIST",
  question: "In which order is every cut made at the shear?",
  example: { formula: `=INDEX(SHOP.CUT.LIST(${EXAMPLE_CUTTERS}),2,1)`, answer: 1 },
  source: "cuts in an order of few settings, lifts and stacks, every plan replayed cut by cut (derived)",
  answer: cutListRows,
});
