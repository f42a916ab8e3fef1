/** BILL.LOADIN: how the finished parts go out. */
import type { LoadedLine } from "../../bill/load/plan-load.ts";
import { type BillPlan, isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { nameOf } from "./rows.ts";

export function billLoadIn(plan: BillPlan, work?: Working): CellMatrix {
  const { system } = plan.shop;
  const loaded = plan.load;
  step(work, "W", "weight of the load", plan.totals.weight, "kg", "sum of blanks; holes are not deducted (derived)");
  const left = plan.lines
    .filter((line) => !isQuoted(line))
    .map((line) => ({ Part: nameOf(line), Message: noQuoteSays(line.findings, system) }));
  return spill("BILL.LOADIN", [...loaded.map((line, i) => loadRow(line, i, system)), ...left], system);
}

function loadRow(loaded: LoadedLine, index: number, system: UnitSystem): SpillRow<"BILL.LOADIN"> {
  const { plan, stacks, stackWeight, liftPiece, liftStack } = loaded;
  const { line, blank } = plan;
  const label = [
    line.area,
    line.part,
    `${line.quantity} pcs`,
    line.spares > 0 ? `${line.spares} spare` : "",
    show(stackWeight, "mass", system, 2),
  ];
  return {
    Order: index + 1,
    Area: line.area,
    Stacks: stacks,
    Part: line.part,
    Quantity: line.quantity,
    Spares: line.spares,
    "Weight each": blank.weight,
    "Stack weight": stackWeight,
    Handling: `${liftPiece} a piece, ${liftStack} a stack`,
    Label: label.filter((text) => text !== "").join(" / "),
  };
}
