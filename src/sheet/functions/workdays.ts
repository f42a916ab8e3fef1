import { CellError, type CellValue } from "../../units/cell.ts";
import { LAST_SERIAL, weekdayOf } from "../evaluate/calendar.ts";
import { toNumber } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { NUM, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";

/** Free weekdays by WORKDAY.INTL's numbers, 0 Sunday to 6 Saturday: 1 to 7 two days, 11 to 17 one. */
const WEEKENDS: Readonly<Record<number, readonly number[]>> = {
  1: [6, 0],
  2: [0, 1],
  3: [1, 2],
  4: [2, 3],
  5: [3, 4],
  6: [4, 5],
  7: [5, 6],
  11: [0],
  12: [1],
  13: [2],
  14: [3],
  15: [4],
  16: [5],
  17: [6],
};

/** A weekend number, or seven digits from Monday with 1 for a free day. */
function weekend(given: CellValue | undefined): ReadonlySet<number> {
  if (given === undefined || given === null) return new Set(WEEKENDS[1]);
  if (given instanceof CellError) fail(given);
  if (typeof given === "string") {
    if (!/^[01]{7}$/.test(given)) fail(VALUE);
    return new Set([...given].flatMap((digit, i) => (digit === "1" ? [(i + 1) % 7] : [])));
  }
  return new Set(WEEKENDS[Math.trunc(Number(given))] ?? fail(NUM));
}

function holidays(frame: Frame, given: Value): ReadonlySet<number> {
  const days = new Set<number>();
  if (given === undefined) return days;
  for (const value of toMatrix(given, frame).flat()) {
    if (value === null || value === "") continue;
    const day = toNumber(value);
    if (day instanceof CellError) fail(day);
    days.add(Math.floor(day));
  }
  return days;
}

interface Calendar {
  isFree(day: number): boolean;
}

function calendar(frame: Frame, free: ReadonlySet<number>, off: ReadonlySet<number>): Calendar {
  const { date1904 } = frame.grid;
  return { isFree: (day) => free.has(weekdayOf(day, date1904)) || off.has(day) };
}

function workday(start: number, days: number, { isFree }: Calendar): number | CellError {
  let day = Math.floor(start);
  let left = Math.trunc(days);
  if (day < 0) return NUM;
  const step = Math.sign(left);
  while (left !== 0) {
    day += step;
    if (day < 0 || day > LAST_SERIAL) return NUM;
    if (!isFree(day)) left -= step;
  }
  return day;
}

function networkDays(start: number, end: number, { isFree }: Calendar): number | CellError {
  const [from, to] = [Math.floor(Math.min(start, end)), Math.floor(Math.max(start, end))];
  if (from < 0 || to > LAST_SERIAL) return NUM;
  let count = 0;
  for (let day = from; day <= to; day++) if (!isFree(day)) count++;
  return start <= end ? count : -count;
}

const everyDayFree = (free: ReadonlySet<number>): boolean => free.size === 7;

export const workdays: readonly WorksheetFunction[] = [
  defineIn("WORKDAY", "number number [array]", (frame, start, days, off) =>
    workday(start, days, calendar(frame, weekend(undefined), holidays(frame, off))),
  ),
  defineIn("WORKDAY.INTL", "number number [value?] [array]", (frame, start, days, kind, off) => {
    const free = weekend(kind);
    return everyDayFree(free) ? VALUE : workday(start, days, calendar(frame, free, holidays(frame, off)));
  }),
  defineIn("NETWORKDAYS", "number number [array]", (frame, start, end, off) =>
    networkDays(start, end, calendar(frame, weekend(undefined), holidays(frame, off))),
  ),
  defineIn("NETWORKDAYS.INTL", "number number [value?] [array]", (frame, start, end, kind, off) => {
    const free = weekend(kind);
    return everyDayFree(free) ? 0 : networkDays(start, end, calendar(frame, free, holidays(frame, off)));
  }),
];
