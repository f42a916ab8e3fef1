import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { defineWeekFunction } from "../bill/week.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { EXAMPLE_STEPS } from "../example/example-week.ts";
import { asSerial } from "../parameters/instant.ts";
import type { SpillRow } from "../record/spill-columns.ts";

export const weekLoad = defineWeekFunction({
  name: "WEEK.LOAD",
  question: "How much of each station's day do the open jobs take?",
  example: {
    formula: `=INDEX(SHOP.WEEK.LOAD(${EXAMPLE_STEPS},${EXAMPLE_CALENDAR},46083.2916666667),2,4)`,
    answer: 4,
  },
  rows: ({ days }) =>
    days.map(
      ({ machine, day, available, load, people }): SpillRow<"WEEK.LOAD"> => ({
        Station: machine,
        Day: asSerial(day),
        Available: available / SECONDS_PER_HOUR,
        Load: load / SECONDS_PER_HOUR,
        Slack: (available - load) / SECONDS_PER_HOUR,
        People: people / SECONDS_PER_HOUR,
      }),
    ),
});
