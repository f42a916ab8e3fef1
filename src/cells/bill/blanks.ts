/** BILL.BLANKS: the blanks of every quoted line. */
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { quotedRows } from "./rows.ts";

export function billBlanks(plan: BillPlan, work?: Working): CellMatrix {
  const total = plan.quoted.reduce((sum, { plan: { blank, blanks } }) => sum + blanks * blank.weight, 0);
  step(work, "W", "weight of all blanks", total, "kg", "sum");
  const rows = quotedRows(
    plan,
    ({ part, plan: { line, blank, blanks, sheetThickness } }): SpillRow<"BILL.BLANKS"> => ({
      Part: part,
      Material: line.material.name,
      Thickness: sheetThickness,
      Length: blank.length,
      Width: blank.width,
      Quantity: blanks,
      Ordered: line.quantity,
      Grain: blank.grain,
      "Cut path": blank.path,
      Pierces: blank.pierces,
      "Weight each": blank.weight,
      Weight: blanks * blank.weight,
    }),
  );
  return spill("BILL.BLANKS", rows, plan.shop.system);
}
