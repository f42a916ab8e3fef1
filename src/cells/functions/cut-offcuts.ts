import { offcutsOf } from "../../bill/cut/offcuts.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const cutOffcuts = defineBillFunction({
  name: "CUT.OFFCUTS",
  question: "What goes back on the rack, as rows for the table of sheets?",
  example: { formula: `=INDEX(SHOP.CUT.OFFCUTS(${EXAMPLE_CUTTERS}),2,9)`, answer: "yes" },
  source: "leftovers of the cut plan that are worth keeping, priced at their share of the sheet (derived)",
  answer: offcutRows,
});

/** Rows to paste below the table of sheets. */
function offcutRows({ groups, shop, number }: BillPlan): CellMatrix {
  const rows = offcutsOf(groups).map(
    ({ tag, sheet, length, width, count, grain, price }): SpillRow<"CUT.OFFCUTS"> => ({
      // Tags of two jobs must not be mistaken for each other on the rack.
      Stock: `${tag} ${number}`,
      Material: sheet.material.name,
      Thickness: sheet.thickness,
      Length: length,
      Width: width,
      Sheets: count,
      Price: price,
      "Remnant worth": sheet.remnantWorth,
      Remnant: "yes",
      Grain: grain,
      "Edges sheared": sheet.edgesSheared ? "yes" : "no",
    }),
  );
  return spill("CUT.OFFCUTS", rows, shop.system);
}
