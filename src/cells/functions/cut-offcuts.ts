import { cutOffcuts as answer } from "../bill/cut-offcuts.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const cutOffcuts = defineBillFunction({
  name: "CUT.OFFCUTS",
  question: "What goes back on the rack, as rows for the table of sheets?",
  example: { formula: `=INDEX(SHOP.CUT.OFFCUTS(${EXAMPLE_CUTTERS}),2,9)`, answer: "yes" },
  source: "left-overs of the cut plan that are worth keeping, priced at their share of the sheet (derived)",
  answer,
});
