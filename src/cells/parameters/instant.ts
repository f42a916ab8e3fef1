/** Points in time: a worksheet date, or text in ISO form. Without a time of day it is midnight, the day's beginning. */
import { type Instant, instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import type { CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";

/** 1 March 1900, before which the worksheet's count has a day that never was, to the end of 9999. */
const FIRST_DAY = 61;
const LAST_DAY = 2_958_465;
const RULE = 'a date, or text such as "2026-03-02 07:30"';
const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}))?)?$/;

export function readInstant(given: CellValue, name: string, rule = RULE): Instant {
  const days = typeof given === "number" ? given : typeof given === "string" ? fromIso(given.trim()) : undefined;
  if (days === undefined || !(days >= FIRST_DAY && days < LAST_DAY + 1)) throw wrong(name, rule, given);
  return instant(Math.round(days * SECONDS_PER_DAY));
}

/** When something is due: a day without a time ends with that day, as people mean it, and no truck leaves at midnight. */
export function readDue(given: CellValue, name: string): Instant {
  const at = readInstant(given, name);
  return at % SECONDS_PER_DAY === 0 ? instant(at + SECONDS_PER_DAY - 1) : at;
}

/** The worksheet's number of an instant. */
export const asSerial = (at: Instant): number => at / SECONDS_PER_DAY;

function fromIso(text: string): number | undefined {
  const match = ISO.exec(text);
  if (!match) return undefined;
  const [year, month, day, hour, minute, second] = match.slice(1).map((part) => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12 || day < 1 || day > daysOf(year, month)) return undefined;
  if (hour > 23 || minute > 59 || second > 59) return undefined;
  return dayNumber(year, month, day) + (hour * 3600 + minute * 60 + second) / SECONDS_PER_DAY;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const daysOf = (year: number, month: number): number => (month === 2 && isLeap(year) ? 29 : itemAt(LENGTHS, month - 1));

/** Day number of a date of the Gregorian calendar; 1 January 2000 is 36526. */
function dayNumber(year: number, month: number, day: number): number {
  const before = year - 1;
  const leaps = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  let days = before * 365 + leaps;
  for (let earlier = 1; earlier < month; earlier++) days += daysOf(year, earlier);
  return days + day - BEFORE_1900;
}
/** Days of the calendar up to the worksheet's day 0. */
const BEFORE_1900 = 693_594;

interface Options {
  readonly description: string;
}

export const instantOf = ({ description }: Options): CellParameter<Instant> => ({
  shape: "cell",
  type: "date",
  description,
  optional: false,
  default: null,
  read: (given, name) => readInstant(given, name),
});
