import type { CellError } from "../../units/cell.ts";
import { type CalendarDay, dayOf, isLeap, monthLength } from "../evaluate/calendar.ts";
import { NUM } from "../evaluate/value.ts";

const isFebruaryEnd = (d: CalendarDay): boolean => d.month === 2 && d.day === monthLength(d.year, 2);

/** Days in a year of twelve months of 30 days, by the American (NASD) or the European rule, as DAYS360 counts. */
export function days360(a: CalendarDay, b: CalendarDay, european: boolean): number {
  let [first, last] = [a.day, b.day];
  if (european) {
    first = Math.min(first, 30);
    last = Math.min(last, 30);
  } else {
    if (isFebruaryEnd(a)) first = 30;
    if (last === 31 && first >= 30) last = 30;
    if (first === 31) first = 30;
    if (b.day === 31 && first < 30) {
      // The end rolls over to the first of the next month.
      return (b.year - a.year) * 360 + (b.month + 1 - a.month) * 30 + 1 - first;
    }
  }
  return (b.year - a.year) * 360 + (b.month - a.month) * 30 + last - first;
}

/** Bond basis 0, American 30/360: both ends of February count as the 30th. */
function days30Us(a: CalendarDay, b: CalendarDay): number {
  let [first, last] = [a.day, b.day];
  if (isFebruaryEnd(a) && isFebruaryEnd(b)) last = 30;
  if (isFebruaryEnd(a)) first = 30;
  if (last === 31 && first >= 30) last = 30;
  if (first === 31) first = 30;
  return (b.year - a.year) * 360 + (b.month - a.month) * 30 + last - first;
}

/** Length of the year that basis 1 divides by: one year's own when the span is within a year, else the mean. */
function averageYear(a: CalendarDay, b: CalendarDay): number {
  const withinYear =
    b.year === a.year || (b.year === a.year + 1 && (b.month < a.month || (b.month === a.month && b.day <= a.day)));
  if (!withinYear) {
    let days = 0;
    for (let year = a.year; year <= b.year; year++) days += isLeap(year) ? 366 : 365;
    return days / (b.year - a.year + 1);
  }
  if (a.year === b.year) return isLeap(a.year) ? 366 : 365;
  const leapDayInside =
    (isLeap(a.year) && (a.month < 2 || (a.month === 2 && a.day <= 29))) ||
    (isLeap(b.year) && (b.month > 2 || (b.month === 2 && b.day === 29)));
  return leapDayInside ? 366 : 365;
}

/** Part of a year between two days: basis 0 US 30/360, 1 actual/actual, 2 actual/360, 3 actual/365, 4 European 30/360. */
export function yearFraction(start: number, end: number, basis: number, date1904: boolean): number | CellError {
  const [from, to] = [Math.floor(Math.min(start, end)), Math.floor(Math.max(start, end))];
  const a = dayOf(from, date1904);
  const b = dayOf(to, date1904);
  if (!a || !b || basis < 0 || basis > 4) return NUM;
  if (basis === 0) return days30Us(a, b) / 360;
  if (basis === 1) return (to - from) / averageYear(a, b);
  if (basis === 4) return days360(a, b, true) / 360;
  return (to - from) / (basis === 2 ? 360 : 365);
}
