import { EXAMPLE_CALENDAR, EXAMPLE_WORKERS } from "../bill/example-shop.ts";
import { routeFinder, routes } from "../bill/routes-range.ts";
import { shopOf } from "../bill/shop-of.ts";
import { billWhatIf as whatIf } from "../bill/what-if.ts";
import { choice } from "../parameters/choice.ts";
import { instantOf } from "../parameters/instant.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { workers } from "../tables/bill-tables.ts";
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
  long: true,
  result: { kind: "table", columns: headers("BILL.WHATIF") },
  example: {
    formula: `=INDEX(SHOP.BILL.WHATIF(${EXAMPLE_WORKERS},${EXAMPLE_CALENDAR},46083,46083.5),2,2)`,
    answer: "in time",
  },
  source:
    "loads in the order of the bill behind the queues, in the shifts of the calendar; vendor days as working days (derived)",
  calculate: ({ calendar, start, due, routes, answer, ...tables }, { system, materials, work }) =>
    whatIf(
      shopOf(tables, system, materials),
      { calendar, start, due, wanted: routeFinder(routes), byStation: answer === "stations" },
      work,
    ),
});
