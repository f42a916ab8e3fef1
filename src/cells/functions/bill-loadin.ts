import { billLoadIn as loadIn } from "../bill/load-in.ts";
import { benders } from "../parameters/bill-tables.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { rates } from "../tables/rates.ts";

export const billLoadin = defineFunction({
  name: "BILL.LOADIN",
  question: "In which order are the parts loaded, in which piles, and what stands on the labels?",
  parameters: { ...benders(), rates: rates(), units: units(), data: data() },
  result: { kind: "table", columns: headers("BILL.LOADIN") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.LOADIN(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Rate","Value","Unit"},{"Material yield",0.8,""},{"Scrap allowance",0.02,""},{"First-piece blanks",1,""},{"First job factor",1.5,""},{"Handling per piece",4,"s"},{"Handling by weight",0.5,"s/lb"},{"Handling by length",1,"s/ft"},{"Overhead",0.25,""},{"Margin",0.3,""},{"One-person limit",50,"lb"})),2,3)',
    answer: 1,
  },
  source:
    "first needed, last loaded; heavy parts at the bottom (common practice); one person by LIFT.LIMIT or the shop's limit",

  calculate: ({ bill, brake, dies, punches, rates }, { system, work }) =>
    loadIn(bill, { brakes: brake, dies, punches }, rates, system, work),
});
