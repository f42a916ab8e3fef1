/** BILL.ROUTE: which lines go to the shear and which to the waterjet. */
import type { BillPlan, QuotedLine } from "../../bill/plan.ts";
import { COST_UNITS } from "../../bill/route/plan-route.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { quotedRows } from "./rows.ts";

const MINUTE = 60; // seconds, by definition

export function billRoute(plan: BillPlan): CellMatrix {
  const { cuts, untimed } = plan.route;
  if (untimed) throw untimed;
  const cutOf = new Map(plan.routed.map((line, i) => [line, cuts?.[i]]));
  const minutes = (time: number | undefined) => time && time / MINUTE;
  const rows = quotedRows(plan, (line): SpillRow<"BILL.ROUTE"> => {
    const cut = cutOf.get(line.plan);
    const cost = cut?.[line.cutter]?.cost;
    return {
      Part: line.part,
      Route: line.cutter,
      Why: whyOf(line),
      "On shear": minutes(cut?.shear?.time),
      "On waterjet": minutes(cut?.waterjet?.time),
      "On brake": minutes(cut?.brake),
      Cost: cost && cost / COST_UNITS,
    };
  });
  return spill("BILL.ROUTE", rows, plan.shop.system);
}

function whyOf({ plan: { line, cutting }, cutter }: QuotedLine): string {
  if (line.pin !== undefined) return "pinned";
  return cutting.shear && cutting.waterjet ? "chosen" : `needs the ${cutter}`;
}
