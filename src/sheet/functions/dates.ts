import { CellError } from "../../units/cell.ts";
import {
  type CalendarDay,
  DAYS_1904,
  dayOf,
  floorDay,
  LAST_SERIAL,
  monthLength,
  serialOf,
  weekdayOf,
} from "../evaluate/calendar.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { textMoment, textNumber } from "../evaluate/text-number.ts";
import { NUM, VALUE } from "../evaluate/value.ts";
import { days360, yearFraction } from "./day-count.ts";
import { define, defineIn, fail } from "./define.ts";

const day = (frame: Frame, serial: number): CalendarDay => dayOf(serial, frame.grid.date1904) ?? fail(NUM);

const serial = (frame: Frame, year: number, month: number, dayOfMonth: number): number =>
  serialOf(year, month, dayOfMonth, frame.grid.date1904) ?? fail(NUM);

/** The same day so many months on, or the month's last day when it is shorter. */
function addMonths(frame: Frame, start: number, months: number): number {
  const from = day(frame, start);
  const month = from.month - 1 + Math.trunc(months);
  const year = from.year + Math.floor(month / 12);
  const monthOfYear = (((month % 12) + 12) % 12) + 1;
  return serial(frame, year, monthOfYear, Math.min(from.day, monthLength(year, monthOfYear)));
}

/** Hours, minutes and seconds to the nearest second. */
function clock(x: number): { hour: number; minute: number; second: number } {
  if (x < 0) fail(NUM);
  const seconds = Math.round((x - Math.floor(x)) * 86_400) % 86_400;
  return { hour: Math.floor(seconds / 3600), minute: Math.floor(seconds / 60) % 60, second: seconds % 60 };
}

/** First day of the week by the number a function is given, Sunday being 0. */
const firstDay = (kind: number): number | undefined =>
  kind === 1 ? 0 : kind === 2 ? 1 : kind >= 11 && kind <= 17 ? (kind - 10) % 7 : undefined;

/** WEEKDAY's numbering: 1 or 17 Sunday=1, 2 or 11 Monday=1, 3 Monday=0, 12 to 16 Tuesday=1 and on. */
function weekday(frame: Frame, x: number, type: number): number | CellError {
  if (x < 0 || x > LAST_SERIAL) return NUM;
  const sunday = weekdayOf(x, frame.grid.date1904);
  const kind = Math.trunc(type);
  if (kind === 3) return (sunday + 6) % 7;
  const first = firstDay(kind);
  return first === undefined ? NUM : ((sunday - first + 7) % 7) + 1;
}

function isoWeek(frame: Frame, x: number): number {
  const thursday = floorDay(x) - ((weekdayOf(x, frame.grid.date1904) + 6) % 7) + 3;
  const { year } = day(frame, thursday);
  return Math.floor((thursday - serial(frame, year, 1, 1)) / 7) + 1;
}

function weekNumber(frame: Frame, x: number, type: number): number | CellError {
  if (x < 0) return NUM;
  const kind = Math.trunc(type);
  if (kind === 21) return isoWeek(frame, x);
  const first = firstDay(kind);
  if (first === undefined) return NUM;
  const newYear = serial(frame, day(frame, x).year, 1, 1);
  const offset = (weekdayOf(newYear, frame.grid.date1904) - first + 7) % 7;
  return Math.floor((floorDay(x) - newYear + offset) / 7) + 1;
}

function dateDifference(frame: Frame, from: number, to: number, unit: string): number | CellError {
  if (floorDay(from) > floorDay(to)) return NUM;
  const a = day(frame, from);
  const b = day(frame, to);
  const months = (b.year - a.year) * 12 + b.month - a.month - (b.day < a.day ? 1 : 0);
  switch (unit.toUpperCase()) {
    case "Y":
      return Math.floor(months / 12);
    case "M":
      return months;
    case "D":
      return floorDay(to) - floorDay(from);
    case "YM":
      return months % 12;
    case "MD": {
      if (b.day >= a.day) return b.day - a.day;
      const before = b.month === 1 ? { year: b.year - 1, month: 12 } : { year: b.year, month: b.month - 1 };
      return b.day - a.day + monthLength(before.year, before.month);
    }
    case "YD": {
      const passed = b.month > a.month || (b.month === a.month && b.day >= a.day);
      return floorDay(to) - serial(frame, passed ? b.year : b.year - 1, a.month, a.day);
    }
    default:
      return NUM;
  }
}

const now = (frame: Frame, name: string): number => frame.grid.now ?? keep("volatile", `${name} needs --now`);

export const dates: readonly WorksheetFunction[] = [
  defineIn("DATE", "number number number", (frame, year, month, dayOfMonth) => {
    const y = Math.trunc(year);
    if (y < 0 || y > 9999) return NUM;
    const base = frame.grid.date1904 ? 1904 : 1900;
    return serial(frame, y < base ? y + 1900 : y, Math.trunc(month), Math.trunc(dayOfMonth));
  }),
  define("TIME", "number number number", (hour, minute, second) => {
    const seconds = Math.trunc(hour) * 3600 + Math.trunc(minute) * 60 + Math.trunc(second);
    return seconds < 0 || Math.max(hour, minute, second) > 32_767 ? NUM : (seconds % 86_400) / 86_400;
  }),
  defineIn("YEAR", "number", (frame, x) => day(frame, x).year),
  defineIn("MONTH", "number", (frame, x) => day(frame, x).month),
  defineIn("DAY", "number", (frame, x) => day(frame, x).day),
  define("HOUR", "number", (x) => clock(x).hour),
  define("MINUTE", "number", (x) => clock(x).minute),
  define("SECOND", "number", (x) => clock(x).second),
  defineIn("DATEVALUE", "text", (frame, text) => {
    const x = textMoment(text);
    return x === undefined ? VALUE : Math.floor(x) - (frame.grid.date1904 ? DAYS_1904 : 0);
  }),
  define("TIMEVALUE", "text", (text) => {
    const x = textMoment(text);
    return x === undefined ? VALUE : x - Math.floor(x);
  }),
  defineIn("TODAY", "", (frame) => Math.floor(now(frame, "TODAY"))),
  defineIn("NOW", "", (frame) => now(frame, "NOW")),
  defineIn("WEEKDAY", "number [number]", (frame, x, type = 1) => weekday(frame, x, type)),
  defineIn("WEEKNUM", "number [number]", (frame, x, type = 1) => weekNumber(frame, x, type)),
  defineIn("ISOWEEKNUM", "number", (frame, x) => (x < 0 ? NUM : isoWeek(frame, x))),
  defineIn("EDATE", "number number", addMonths),
  defineIn("EOMONTH", "number number", (frame, start, months) => {
    const from = day(frame, start);
    return serial(frame, from.year, from.month + Math.trunc(months) + 1, 0);
  }),
  define("DAYS", "any any", (end, start) => {
    const number = (v: typeof end): number => {
      if (v instanceof CellError) fail(v);
      if (typeof v === "string") return textNumber(v) ?? fail(VALUE);
      return Number(v ?? 0);
    };
    return floorDay(number(end)) - floorDay(number(start));
  }),
  defineIn("DAYS360", "number number [boolean]", (frame, start, end, european = false) =>
    days360(day(frame, start), day(frame, end), european),
  ),
  defineIn("DATEDIF", "number number text", dateDifference),
  defineIn("YEARFRAC", "number number [number]", (frame, start, end, basis = 0) =>
    start < 0 || end < 0 ? NUM : yearFraction(start, end, Math.trunc(basis), frame.grid.date1904),
  ),
];
