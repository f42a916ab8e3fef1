import { dayOf, type Instant, instant, SECONDS_PER_DAY, shiftsOf, type WorkCalendar } from "./calendar.ts";

const FURTHEST_DAYS = 20_000; // chosen: a calendar without work is not walked for ever

/** So many working days after a day: days with any shift. A vendor's days are counted by the shop's calendar. */
export function afterWorkingDays(from: Instant, days: number, calendar: WorkCalendar): Instant {
  let day = dayOf(from);
  for (let left = days, looked = 0; left > 0 && looked < FURTHEST_DAYS; looked++) {
    day++;
    if (shiftsOf(calendar, day).length > 0) left--;
  }
  return instant(day * SECONDS_PER_DAY + (from % SECONDS_PER_DAY));
}

export const vendorDaysInWords = (days: number): string => `${days} vendor ${days === 1 ? "day" : "days"}`;
