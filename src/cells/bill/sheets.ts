/** BILL.SHEETS: what to buy, what it weighs and how it is handled. */
import { liftOf } from "../../bill/lines/lifting.ts";
import { type BillPlan, isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { nameOf } from "./rows.ts";

export function billSheets(plan: BillPlan, work?: Working): CellMatrix {
  const { shop } = plan;
  const rows = plan.groups.flatMap(({ material, cutter, uses }) =>
    uses.map(
      ({ sheet, count, weight, price, pieces }): SpillRow<"BILL.SHEETS"> => ({
        Material: material.name,
        Thickness: sheet.thickness,
        Stock: sheet.name,
        Length: sheet.length,
        Width: sheet.width,
        "Cut on": cutter,
        Sheets: count,
        "Price each": sheet.price,
        Price: price,
        "Lead days": sheet.leadDays,
        Certificate: [...pieces.keys()].some(({ line }) => line.wantsCertificate) ? "wanted" : "",
        "Weight each": sheet.weight,
        "Bundle weight": weight,
        Handling: liftOf(sheet.weight, shop.rates),
      }),
    ),
  );
  const total = plan.groups.flatMap(({ uses }) => uses).reduce((sum, { price }) => sum + (price ?? 0), 0);
  step(work, "total", "price of all sheets", total, "money", "sum");
  const left = plan.lines
    .filter((line) => !isQuoted(line))
    .map(
      (line): SpillRow<"BILL.SHEETS"> => ({ Stock: nameOf(line), Message: noQuoteSays(line.findings, shop.system) }),
    );
  return spill("BILL.SHEETS", [...rows, ...left], shop.system);
}
