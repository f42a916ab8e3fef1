import { weekLoad as answer } from "../bill/week.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { EXAMPLE_STEPS } from "../example/example-week.ts";
import { instantOf } from "../parameters/instant.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { calendar } from "../tables/calendar.ts";
import { weekSteps } from "../tables/week-steps.ts";

export const weekLoad = defineFunction({
  name: "WEEK.LOAD",
  question: "How much of each station's day do the open jobs take?",
  parameters: {
    steps: weekSteps(),
    calendar: calendar(),
    now: instantOf({ description: "From when the open work is planned" }),
  },
  long: true,
  result: { kind: "table", columns: headers("WEEK.LOAD") },
  example: {
    formula: `=INDEX(SHOP.WEEK.LOAD(${EXAMPLE_STEPS},${EXAMPLE_CALENDAR},46083.2916666667),2,4)`,
    answer: 4,
  },
  source: "fewest late hours by weight, then least set-up, then earliest, by search with a bound (derived)",
  calculate: (given, { work }) => answer(given, work),
});
