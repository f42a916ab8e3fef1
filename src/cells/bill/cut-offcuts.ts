/** CUT.OFFCUTS: what goes back on the rack, as rows that are pasted below the table of sheets. */
import { offcutsOf } from "../../bill/cut/offcuts.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

export function cutOffcuts({ groups, shop, number }: BillPlan): CellMatrix {
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
