import type { QuotedLine } from "../../bill/plan.ts";
import { COST_UNITS } from "../../bill/route/plan-route.ts";
import { quotedRows } from "../bill/rows.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billRoute = defineBillFunction({
  name: "BILL.ROUTE",
  question: "Which lines go to the shear and which to the waterjet, to finish first or cheapest by a due time?",
  example: { formula: `=INDEX(SHOP.BILL.ROUTE(${EXAMPLE_SHOP}),2,2)`, answer: "shear" },
  source:
    "exact search: Lagrangian bound and dynamic programming over a growing core (Pisinger 1997, memory); proved or says so",
  answer: (plan) => {
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
  },
});

const MINUTE = 60; // seconds, by definition

function whyOf({ plan: { line, cutting }, cutter }: QuotedLine): string {
  if (line.pin !== undefined) return "pinned";
  return cutting.shear && cutting.waterjet ? "chosen" : `needs the ${cutter}`;
}
