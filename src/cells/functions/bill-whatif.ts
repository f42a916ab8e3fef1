import { routeFinder, routes } from "../bill/routes-range.ts";
import { shopOf } from "../bill/shop-of.ts";
import { billWhatIf as whatIf } from "../bill/what-if.ts";
import { workers } from "../parameters/bill-tables.ts";
import { choice } from "../parameters/choice.ts";
import { instantOf } from "../parameters/instant.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { calendar } from "../tables/calendar.ts";

export const billWhatif = defineFunction({
  name: "BILL.WHATIF",
  question: "If it must leave by then, which lines go into overtime, go outside, or break it?",
  parameters: {
    ...workers(),
    calendar: calendar(),
    start: instantOf({ description: "When the work can begin" }),
    due: instantOf({ description: "When it must leave" }),
    routes: routes(),
    answer: choice({
      description: '"lines" for the verdict of every line, "stations" for the hours of every station',
      words: ["lines", "stations"],
      fallback: "lines",
    }),
    units: units(),
    data: data(),
  },
  result: { kind: "table", columns: headers("BILL.WHATIF") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.WHATIF(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"},{"S",0.25,120,20,2}),"",VSTACK({"Station","Basis","Set-up (min)","Time each (min)","Rate"},{"Shear","machine",5,"",60},{"Brake","machine",10,"",75},{"Drill","hole",3,0.4,55}),VSTACK({"Rate","Value","Unit"},{"Material yield",0.8,""},{"Scrap allowance",0.02,""},{"First-piece blanks",1,""},{"First job factor",1.5,""},{"Handling per piece",4,"s"},{"Handling by weight",0.5,"s/lb"},{"Handling by length",1,"s/ft"},{"Overhead",0.25,""},{"Margin",0.3,""},{"One-person limit",50,"lb"}),VSTACK({"Day","Start","End"},{"Mon","7:00","15:00"},{"Tue","7:00","15:00"}),46083,46083.5),2,2)',
    answer: "in time",
  },
  source:
    "loads in the order of the bill behind the queues, in the shifts of the calendar; vendor days as working days (derived)",

  calculate: ({ bill, calendar, start, due, routes, answer, ...tables }, { system, materials, work }) =>
    whatIf(
      bill,
      shopOf(tables, system, materials),
      { calendar, start, due, wanted: routeFinder(routes), byStation: answer === "stations" },
      work,
    ),
});
