import { billRoute as route } from "../bill/route.ts";
import { shopOf } from "../bill/shop-of.ts";
import { workers } from "../parameters/bill-tables.ts";
import { choice } from "../parameters/choice.ts";
import { instantOf, optionalInstant } from "../parameters/instant.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { calendar } from "../tables/calendar.ts";

export const billRoute = defineFunction({
  name: "BILL.ROUTE",
  question: "Which lines go to the shear and which to the waterjet, to finish first or cheapest by a due time?",
  parameters: {
    ...workers(),
    calendar: calendar(),
    start: instantOf({ description: "When the work can begin" }),
    due: optionalInstant({
      description: "When it must be done: the cheapest by then; blank for the one that finishes first",
    }),
    answer: choice({
      description: '"lines" for the route of every line, "summary" for finish, cost, bounds and what is saved',
      words: ["lines", "summary"],
      fallback: "lines",
    }),
    units: units(),
    data: data(),
  },
  result: { kind: "table", columns: headers("BILL.ROUTE") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.ROUTE(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"},{"S",0.25,120,20,2}),"",VSTACK({"Station","Basis","Set-up (min)","Time each (min)","Rate"},{"Shear","machine",5,"",60},{"Brake","machine",10,"",75},{"Drill","hole",3,0.4,55}),VSTACK({"Rate","Value","Unit"},{"Material yield",0.8,""},{"Scrap allowance",0.02,""},{"First-piece blanks",1,""},{"First job factor",1.5,""},{"Handling per piece",4,"s"},{"Handling by weight",0.5,"s/lb"},{"Handling by length",1,"s/ft"},{"Overhead",0.25,""},{"Margin",0.3,""},{"One-person limit",50,"lb"}),VSTACK({"Day","Start","End"},{"Mon","7:00","15:00"},{"Tue","7:00","15:00"}),46083),2,2)',
    answer: "shear",
  },
  source:
    "exact search: Lagrangian bound and dynamic programming over a growing core (Pisinger 1997, memory); proved or says so",
  long: true,
  calculate: ({ bill, calendar, start, due, answer, ...tables }, { system, materials, work }) =>
    route(bill, shopOf(tables, system, materials), { calendar, start, due, summary: answer === "summary" }, work),
});
