import { EXAMPLE_CALENDAR, EXAMPLE_WORKERS } from "../bill/example-shop.ts";
import { billRoute as route } from "../bill/route.ts";
import { shopOf } from "../bill/shop-of.ts";
import { choice } from "../parameters/choice.ts";
import { instantOf, optionalInstant } from "../parameters/instant.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { workers } from "../tables/bill-tables.ts";
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
    formula: `=INDEX(SHOP.BILL.ROUTE(${EXAMPLE_WORKERS},${EXAMPLE_CALENDAR},46083),2,2)`,
    answer: "shear",
  },
  source:
    "exact search: Lagrangian bound and dynamic programming over a growing core (Pisinger 1997, memory); proved or says so",
  long: true,
  calculate: ({ calendar, start, due, answer, ...tables }, { system, materials, work }) =>
    route(shopOf(tables, system, materials), { calendar, start, due, summary: answer === "summary" }, work),
});
