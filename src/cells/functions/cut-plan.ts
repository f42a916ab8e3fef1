import type { CellMatrix } from "../../units/cell.ts";
import { blanks } from "../cut/blanks-table.ts";
import { cutLimits } from "../cut/limits-table.ts";
import { planRows } from "../cut/plan-rows.ts";
import { planSheets } from "../cut/plan-sheets.ts";
import { data } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers, spill } from "../record/spill-columns.ts";
import { stock } from "../tables/stock.ts";

export const cutPlan = defineFunction({
  name: "CUT.PLAN",
  question: "Which sheets are pulled, what is cut from each, and how near is that to the least metal?",
  parameters: {
    blanks: blanks(),
    stock: stock(),
    limits: cutLimits(),
    effort: number({
      description: "How long to search, 1 quick to 100 thorough; the same effort gives the same plan on every machine",
      rule: { from: 1, to: 100 },
      fallback: 2,
    }),
    units: units(),
    data: data(),
  },
  result: { kind: "table", columns: headers("CUT.PLAN") },
  long: true,
  example: {
    formula:
      '=INDEX(SHOP.CUT.PLAN({"Part","Material","Thickness (in)","Length (in)","Width (in)","Quantity";"A","A36",0.25,24,12,16},{"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price";"4x8","A36",0.25,96,48,300},{"Cut length (in)";120}),2,7)',
    answer: 1,
  },
  source:
    "column generation over guillotine patterns (derived), every plan replayed cut by cut; lower bound by area of the true sizes",
  calculate: ({ blanks, stock, limits, effort }, { system }): CellMatrix =>
    spill(
      "CUT.PLAN",
      planSheets(blanks, stock, limits[0]!, effort).flatMap((plan) => planRows(plan, system)),
      system,
    ),
});
