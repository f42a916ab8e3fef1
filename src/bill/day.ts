import type { Instant } from "../calc/schedule/calendar.ts";
import { itemAt } from "../units/certain.ts";

const SECONDS_PER_DAY = 86_400; // by definition
/** Julian day of the worksheet's day 0, 1899-12-30 (ECMA-376 part 1, 18.17.4.1, memory). */
const JULIAN_DAY_0 = 2_415_019;

const DAY_LETTERS = "2026-03-09".length;

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]; // Julian day 0 was a Monday

/** "Mon 2026-03-09" */
export function dayOfWeek(instant: Instant): string {
  const day = Math.floor(instant / SECONDS_PER_DAY);
  const word = itemAt(DAYS, (day + JULIAN_DAY_0) % DAYS.length);
  return `${word} ${dayAndTime((day * SECONDS_PER_DAY) as Instant).slice(0, DAY_LETTERS)}`;
}

/** "06:00" */
export const timeOfDay = (instant: Instant): string => dayAndTime(instant).slice(DAY_LETTERS + 1) || "23:59";

/** "2026-03-09 06:00"; a day alone is its end, as where something is due on it. */
export function dayAndTime(instant: Instant): string {
  const day = Math.floor(instant / SECONDS_PER_DAY);
  const second = Math.floor(instant - day * SECONDS_PER_DAY);
  if (second === SECONDS_PER_DAY - 1) return dateOf(day);
  return `${dateOf(day)} ${two(Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}`;
}

const two = (value: number): string => String(value).padStart(2, "0");

/** Year, month and day of a day number (Fliegel and Van Flandern, Communications of the ACM 11, 1968, 657; memory). */
function dateOf(day: number): string {
  const whole = Math.floor;
  const since = day + JULIAN_DAY_0 + 68_569;
  const centuries = whole((4 * since) / 146_097);
  const inCentury = since - whole((146_097 * centuries + 3) / 4);
  const years = whole((4000 * (inCentury + 1)) / 1_461_001);
  const inYear = inCentury - whole((1461 * years) / 4) + 31;
  const months = whole((80 * inYear) / 2447);
  const late = whole(months / 11);
  const year = 100 * (centuries - 49) + years + late;
  return `${year}-${two(months + 2 - 12 * late)}-${two(inYear - whole((2447 * months) / 80))}`;
}

/** "2026-03-09 06:00"; the day alone where it was given without a time and is meant from its beginning. */
export const dayFrom = (instant: Instant): string => dayAndTime(instant).replace(" 00:00", "");
