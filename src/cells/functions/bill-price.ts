import { PROFIT_BASES } from "../../calc/cost/price-for-margin.ts";
import { plan } from "../bill/plan-range.ts";
import { billPrice as price } from "../bill/price.ts";
import { routeFinder, routes } from "../bill/routes-range.ts";
import { shopOf } from "../bill/shop-of.ts";
import { cutters } from "../parameters/bill-tables.ts";
import { choice } from "../parameters/choice.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { rates } from "../tables/rates.ts";
import { stations } from "../tables/stations.ts";
import { stock } from "../tables/stock.ts";

export const billPrice = defineFunction({
  name: "BILL.PRICE",
  question: "What is to be asked for every line and for the order?",
  parameters: {
    ...cutters(),
    stock: stock(),
    stations: stations(),
    rates: rates(),
    plan: plan(),
    routes: routes(),
    pace: choice({ description: '"rush" adds the rush charge', words: ["normal", "rush"], fallback: "normal" }),
    basis: choice({
      description: 'Profit as "margin", a share of the price, or "markup", a share of the cost',
      words: PROFIT_BASES,
      fallback: "margin",
    }),
    units: units(),
    data: data(),
  },
  result: { kind: "table", columns: headers("BILL.PRICE") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.PRICE(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"},{"S",0.25,120,20,2}),"",VSTACK({"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"},{"48 x 96","A36",0.25,96,48,220}),VSTACK({"Station","Basis","Set-up (min)","Time each (min)","Rate"},{"Shear","machine",5,"",60},{"Brake","machine",10,"",75},{"Drill","hole",3,0.4,55}),VSTACK({"Rate","Value","Unit"},{"Material yield",0.8,""},{"Scrap allowance",0.02,""},{"First-piece blanks",1,""},{"First job factor",1.5,""},{"Handling per piece",4,"s"},{"Handling by weight",0.5,"s/lb"},{"Handling by length",1,"s/ft"},{"Overhead",0.25,""},{"Margin",0.3,""},{"One-person limit",50,"lb"})),2,9)',
    answer: 6.43,
  },
  source:
    "material by area or from the cut plan, labour and set-up at the stations' rates, overhead, margin (by definition); all figures of the workbook",

  calculate: ({ bill, stock, plan, routes, pace, basis, ...tables }, { system, materials, work }) =>
    price(
      bill,
      shopOf(tables, system, materials),
      { stock, plan, wanted: routeFinder(routes), rush: pace === "rush", basis },
      work,
    ),
});
