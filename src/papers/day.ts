import type { Instant } from "../bill/pictures.ts";
import { itemAt } from "../units/certain.ts";

/** Day number of the worksheet on which 1970 begins; the day numbers count from 1899-12-30 (ECMA-376 part 1, 18.17.4.1, memory). */
const DAY_1970 = 25_569;
const SECONDS_PER_DAY = 86_400; // by definition
const MS_PER_SECOND = 1000; // by definition

const DAYS = ["Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"]; // 1970 began on a Thursday

/** "Mon 2026-03-09" */
export function dayOfWeek(instant: Instant): string {
  const day = Math.floor(instant / SECONDS_PER_DAY);
  const word = itemAt(DAYS, (((day - DAY_1970) % DAYS.length) + DAYS.length) % DAYS.length);
  return `${word} ${dayAndTime((day * SECONDS_PER_DAY) as Instant)}`;
}

/** "06:00" */
export const timeOfDay = (instant: Instant): string => dayAndTime(instant).slice("2026-03-09 ".length) || "00:00";

/** "2026-03-09 06:00"; the hour is left out at midnight. */
export function dayAndTime(instant: Instant): string {
  const [day = "", time = ""] = new Date((instant - DAY_1970 * SECONDS_PER_DAY) * MS_PER_SECOND)
    .toISOString()
    .split("T");
  // A day that is given without a time is its beginning, or its end where something is due.
  return /^(?:00:00:00|23:59:59)/.test(time) ? day : `${day} ${time.slice(0, 5)}`;
}
