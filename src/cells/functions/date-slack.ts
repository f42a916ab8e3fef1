import { calendarOf } from "../../bill/nouns/calendar.ts";
import { slack } from "../../calc/schedule/finish.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { instantOf } from "../parameters/instant.ts";
import { stationName, workHours } from "../parameters/work-hours.ts";
import { defineFunction } from "../record/record.ts";
import { calendar } from "../tables/calendar.ts";

export const dateSlack = defineFunction({
  name: "DATE.SLACK",
  question: "How many working hours are left over, or missing?",
  parameters: {
    start: instantOf({ description: "When the work can begin" }),
    due: instantOf({ description: "When it must be done" }),
    hours: workHours(),
    calendar: calendar(),
    station: stationName(),
  },
  result: { kind: "h" },
  example: {
    formula: `=SHOP.DATE.SLACK(46083,46084,6,${EXAMPLE_CALENDAR})`,
    answer: 2.5,
  },
  source: "working time between the finish and the due time; negative where it is missing (derived)",
  calculate: ({ start, due, hours, calendar, station }, { work }) => {
    const left = slack(start, due, hours, calendarOf(calendar, station), work) / SECONDS_PER_HOUR;
    return step(work, "slack", "in hours", left, "h", "by definition");
  },
});
