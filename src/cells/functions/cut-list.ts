import type { CellMatrix } from "../../units/cell.ts";
import { blanks } from "../cut/blanks-table.ts";
import { cutLimits } from "../cut/limits-table.ts";
import { listRows } from "../cut/plan-rows.ts";
import { planSheets } from "../cut/plan-sheets.ts";
import { data } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers, spill } from "../record/spill-columns.ts";
import { stock } from "../tables/stock.ts";

export const cutList = defineFunction({
  name: "CUT.LIST",
  question: "In which order is every cut made at the shear?",
  parameters: {
    blanks: blanks(),
    stock: stock(),
    limits: cutLimits(),
    effort: number({
      description: "The effort given to CUT.PLAN: the same effort lists the same plan",
      rule: { from: 1, to: 100 },
      fallback: 2,
    }),
    units: units(),
    data: data(),
  },
  result: { kind: "table", columns: headers("CUT.LIST") },
  long: true,
  example: {
    formula:
      '=INDEX(SHOP.CUT.LIST({"Part","Material","Thickness (in)","Length (in)","Width (in)","Quantity";"A","A36",0.25,24,12,16},{"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price";"4x8","A36",0.25,96,48,300},{"Cut length (in)";120}),2,1)',
    answer: 1,
  },
  source:
    "the plan of CUT.PLAN in cutting order: datum trims, strips, crosscuts, sizing; equal gauge settings together",
  calculate: ({ blanks, stock, limits, effort }, { system }): CellMatrix =>
    spill(
      "CUT.LIST",
      planSheets(blanks, stock, limits[0]!, effort).flatMap((plan) => listRows(plan, system)),
      system,
    ),
});
