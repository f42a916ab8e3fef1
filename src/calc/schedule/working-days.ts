import { dayOf, type Instant, instant, SECONDS_PER_DAY, shiftsOf, type WorkCalendar } from "./calendar.ts";

const FURTHEST_DAYS = 20_000; // chosen: a calendar without work is not walked for ever

/** So many working days after a day: days with any shift. A vendor's days are counted by the shop's calendar. */
export const afterWorkingDays = (from: Instant, days: number, calendar: WorkCalendar): Instant =>
  stepped(from, days, calendar, 1);

/** The latest moment from which so many working days end by then. */
export const beforeWorkingDays = (to: Instant, days: number, calendar: WorkCalendar): Instant =>
  stepped(to, days, calendar, -1);

function stepped(from: Instant, days: number, calendar: WorkCalendar, way: 1 | -1): Instant {
  let day = dayOf(from);
  for (let left = days, looked = 0; left > 0 && looked < FURTHEST_DAYS; looked++) {
    day += way;
    if (shiftsOf(calendar, day).length > 0) left--;
  }
  return instant(day * SECONDS_PER_DAY + (from % SECONDS_PER_DAY));
}

export const vendorDaysInWords = (days: number): string => `${days} vendor ${days === 1 ? "day" : "days"}`;
