import { calendarOf } from "../../bill/nouns/calendar.ts";
import { finish } from "../../calc/schedule/finish.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { asSerial, instantOf } from "../parameters/instant.ts";
import { stationName, workHours } from "../parameters/work-hours.ts";
import { defineFunction } from "../record/record.ts";
import { calendar } from "../tables/calendar.ts";

export const dateFinish = defineFunction({
  name: "DATE.FINISH",
  question: "When is this much working time done?",
  parameters: {
    start: instantOf({ description: "When the work can begin" }),
    hours: workHours(),
    calendar: calendar(),
    station: stationName(),
  },
  result: { kind: "date" },
  example: {
    formula: `=SHOP.DATE.FINISH(46083.375,40,${EXAMPLE_CALENDAR})`,
    answer: 46087.625,
  },
  source: "working time laid into the shifts of the calendar (derived)",
  calculate: ({ start, hours, calendar, station }, { work }) => {
    const at = asSerial(finish(start, hours, calendarOf(calendar, station), work));
    return step(work, "finish", "as a worksheet date", at, "date", "days since the worksheet's day 0");
  },
});
