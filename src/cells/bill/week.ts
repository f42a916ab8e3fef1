/** Functions about the open work of several jobs on one calendar. */
import type { CalendarRow } from "../../bill/nouns/calendar.ts";
import type { OpenJob, OpenStep } from "../../bill/week/open-step.ts";
import { planSteps } from "../../bill/week/plan-steps.ts";
import type { Week } from "../../bill/week/week.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { instantOf } from "../parameters/instant.ts";
import { type AnyRecord, defineFunction } from "../record/record.ts";
import { headers, type SpillName, type SpillRow, spill } from "../record/spill-columns.ts";
import { calendar } from "../tables/calendar.ts";
import { openSteps, type WeekRow, weekSteps } from "../tables/week-steps.ts";

interface WeekFunction<N extends SpillName> extends Pick<AnyRecord, "question" | "example"> {
  readonly name: N;
  readonly rows: (week: Week<OpenStep>) => SpillRow<N>[];
}

/** The record of a function that shows one side of the week. */
export const defineWeekFunction = <N extends SpillName>({ rows, ...record }: WeekFunction<N>): AnyRecord =>
  defineFunction({
    ...record,
    parameters: {
      steps: weekSteps(),
      calendar: calendar(),
      now: instantOf({ description: "From when the open work is planned" }),
    },
    long: true,
    result: { kind: "table", columns: headers(record.name) },
    source: "fewest late hours by weight, then least set-up, then earliest, by search with a bound (derived)",
    calculate: (given, { work }) => spill(record.name, rows(weekOf(given, work)), "in"),
  });

interface Given {
  readonly steps: readonly WeekRow[];
  readonly calendar: readonly CalendarRow[];
  readonly now: Instant;
}

/** Both functions ask for the same week. */
const planned = remember(
  2,
  (open: { jobs: readonly OpenJob[]; steps: OpenStep[] }, calendar: readonly CalendarRow[], now: Instant) =>
    planSteps({ ...open, shop: { calendar, stations: [] } }, { now }),
);
function weekOf({ steps, calendar, now }: Given, work?: Working): Week<OpenStep> {
  const open = openSteps(steps);
  const week = work ? planSteps({ ...open, shop: { calendar, stations: [] } }, { now }) : planned(open, calendar, now);
  const told = (symbol: string, meaning: string, seconds: number, source: string) =>
    step(work, symbol, meaning, seconds / SECONDS_PER_HOUR, "h", source);
  told("H", "hours late that no plan of these steps is below", week.bound.late, "bound (derived)");
  told("S", "set-up, shared by equal words in Set for", week.worth.setUp, "sum");
  told("L", "hours late by weight, a rush three times", week.worth.late, "search (derived)");
  return week;
}
