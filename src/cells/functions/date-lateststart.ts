import { calendarOf } from "../../bill/nouns/calendar.ts";
import { latestStart } from "../../calc/schedule/finish.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { asSerial, instantOf } from "../parameters/instant.ts";
import { stationName, workHours } from "../parameters/work-hours.ts";
import { defineFunction } from "../record/record.ts";
import { calendar } from "../tables/calendar.ts";

export const dateLateststart = defineFunction({
  name: "DATE.LATESTSTART",
  question: "When must the work begin at the latest, to be done by then?",
  parameters: {
    due: instantOf({ description: "When it must be done" }),
    hours: workHours(),
    calendar: calendar(),
    station: stationName(),
  },
  result: { kind: "date" },
  example: {
    formula: `=SHOP.DATE.LATESTSTART(46090.625,40,${EXAMPLE_CALENDAR})`,
    answer: 46084.375,
  },
  source: "working time laid back into the shifts of the calendar (derived)",
  calculate: ({ due, hours, calendar, station }, { work }) => {
    const at = asSerial(latestStart(due, hours, calendarOf(calendar, station), work));
    return step(work, "start", "as a worksheet date", at, "date", "days since the worksheet's day 0");
  },
});
