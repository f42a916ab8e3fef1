import { billCheck as check } from "../bill/check.ts";
import { cutters } from "../parameters/bill-tables.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { rates } from "../tables/rates.ts";

export const billCheck = defineFunction({
  name: "BILL.CHECK",
  question: "What is wrong with every line: bends, cut, drawing radius and tolerance?",
  parameters: { ...cutters(), rates: rates(true), units: units(), data: data() },
  result: { kind: "table", columns: headers("BILL.CHECK") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.CHECK(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"},{"S",0.25,120,20,2}),""),2,2)',
    answer: "check",
  },
  source:
    "BEND.CHECK and SHEAR.CHECK on every line; tolerance stack of edge, bends and angle (memory); the plate decides",

  calculate: ({ bill, brake, dies, punches, shear, waterjet, rates }, { system, materials, work }) =>
    check(bill, { brakes: brake, dies, punches, shears: shear, waterjets: waterjet, rates, materials, system }, work),
});
