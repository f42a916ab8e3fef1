import { plan } from "../bill/plan-range.ts";
import { billSheets as sheets } from "../bill/sheets.ts";
import { benders } from "../parameters/bill-tables.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { rates } from "../tables/rates.ts";
import { stock } from "../tables/stock.ts";

export const billSheets = defineFunction({
  name: "BILL.SHEETS",
  question: "Which sheets are to be bought, what do they cost and weigh, and who can lift them?",
  parameters: { ...benders(), stock: stock(), rates: rates(), plan: plan(), units: units(), data: data() },
  result: { kind: "table", columns: headers("BILL.SHEETS") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.SHEETS(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"},{"48 x 96","A36",0.25,96,48,220}),VSTACK({"Rate","Value","Unit"},{"Material yield",0.8,""},{"Scrap allowance",0.02,""},{"First-piece blanks",1,""},{"First job factor",1.5,""},{"Handling per piece",4,"s"},{"Handling by weight",0.5,"s/lb"},{"Handling by length",1,"s/ft"},{"Overhead",0.25,""},{"Margin",0.3,""},{"One-person limit",50,"lb"})),2,6)',
    answer: 1,
  },
  source: "sheets of the cut plan, else area over the stated yield (derived)",

  calculate: ({ bill, brake, dies, punches, stock, rates, plan }, { system, work }) =>
    sheets(bill, { brakes: brake, dies, punches, stock, rates, plan, system }, work),
});
