import { PROFIT_BASES } from "../../calc/cost/price-for-margin.ts";
import { EXAMPLE_CUTTERS, EXAMPLE_RATES, EXAMPLE_STATIONS, EXAMPLE_STOCK } from "../bill/example-shop.ts";
import { plan } from "../bill/plan-range.ts";
import { billPrice as price } from "../bill/price.ts";
import { routeFinder, routes } from "../bill/routes-range.ts";
import { shopOf } from "../bill/shop-of.ts";
import { choice } from "../parameters/choice.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { cutters } from "../tables/bill-tables.ts";
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
  long: true,
  result: { kind: "table", columns: headers("BILL.PRICE") },
  example: {
    formula: `=INDEX(SHOP.BILL.PRICE(${EXAMPLE_CUTTERS},${EXAMPLE_STOCK},${EXAMPLE_STATIONS},${EXAMPLE_RATES}),2,9)`,
    answer: 6.43,
  },
  source:
    "material by area or from the cut plan, labour and set-up at the stations' rates, overhead, margin (by definition); all figures of the workbook",
  calculate: ({ stock, plan, routes, pace, basis, ...tables }, { system, materials, work }) =>
    price(
      shopOf(tables, system, materials),
      { stock, plan, wanted: routeFinder(routes), rush: pace === "rush", basis },
      work,
    ),
});
