import { noAnswer } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { SECONDS_PER_HOUR, type Seconds, seconds } from "../time/seconds.ts";
import { dayOf, type Instant, instant, intervalsFrom, SECONDS_PER_DAY, type WorkCalendar } from "./calendar.ts";

export const FURTHEST_DAYS = 20_000; // chosen: more than fifty years; a calendar without work is refused, not walked for ever

/**
 * When is so much working time done, begun at or after the start? No work is done at the start itself. The end of a
 * shift, not the beginning of the next, is the finish of work that ends with it. #N/A where the calendar has no such time.
 */
export function finish(start: Instant, work: Seconds, calendar: WorkCalendar, steps?: Working): Instant {
  let left: number = work;
  let at = start;
  if (left > 0) {
    const last = dayOf(start) + FURTHEST_DAYS;
    for (const { from, to } of intervalsFrom(calendar, start, last)) {
      const span = to - from;
      at = instant(from + Math.min(left, span));
      left -= Math.min(left, span);
      if (left <= 0) break;
    }
    if (left > 0) throw noWork(work);
  }
  return step(steps, "finish", "working time laid into the shifts", at, "s since day 0", "the workbook's calendar");
}

/** The latest start from which so much working time is done by the due time. */
export function latestStart(due: Instant, work: Seconds, calendar: WorkCalendar, steps?: Working): Instant {
  let at = due;
  // Look back twice as far until there is time enough, then give back from the front.
  for (let days = 14; ; days *= 2) {
    const found = [...intervalsBetween(calendar, instant(due - days * SECONDS_PER_DAY), due)];
    const total = found.reduce((sum, { from, to }) => sum + (to - from), 0);
    if (total >= work) {
      let spare = total - work;
      for (const { from, to } of found) {
        if (spare < to - from) {
          at = instant(from + spare);
          break;
        }
        spare -= to - from;
      }
      break;
    }
    if (days > FURTHEST_DAYS) throw noWork(work);
  }
  return step(
    steps,
    "start",
    "working time laid back from the due time",
    at,
    "s since day 0",
    "the workbook's calendar",
  );
}

/** Working time between two instants; 0 where the second is not later. */
export const workBetween = (from: Instant, to: Instant, calendar: WorkCalendar): Seconds => {
  let total = 0;
  for (const span of intervalsBetween(calendar, from, to)) total += span.to - span.from;
  return seconds(total);
};

/** Working time left over when the work begins at the start; negative: working time that is missing. */
export function slack(start: Instant, due: Instant, work: Seconds, calendar: WorkCalendar, steps?: Working): Seconds {
  const done = finish(start, work, calendar, steps);
  const left = done <= due ? workBetween(done, due, calendar) : -workBetween(due, done, calendar);
  return step(steps, "slack", "working time from the finish to the due time", seconds(left), "s", "derived");
}

function* intervalsBetween(calendar: WorkCalendar, from: Instant, to: Instant) {
  for (const span of intervalsFrom(calendar, from, dayOf(to))) {
    if (span.from >= to) return;
    yield { from: span.from, to: instant(Math.min(span.to, to)) };
  }
}

const noWork = (work: Seconds) =>
  noAnswer(
    "calendar",
    "one with working time enough",
    `less than ${work < Infinity ? `${Math.round(work / SECONDS_PER_HOUR)} h` : "can be counted"} in ${FURTHEST_DAYS} days`,
    "give Start and End of the weekdays that are worked",
  );
