/**
 * Working time. Instants are whole seconds since day 0 of the worksheet's day numbers, so that a day number times 86,400
 * is midnight; there is no clock and no time zone here.
 */
import type { Quantity } from "../../units/quantity.ts";

export type Instant = Quantity<"s since day 0">;
export const instant = (value: number) => value as Instant;

export const SECONDS_PER_DAY = 86_400; // by definition
export const DAYS_PER_WEEK = 7; // by definition

/** From and to in seconds after the midnight its day begins with; a night shift ends after 86,400. */
export interface Shift {
  readonly from: number;
  readonly to: number;
}

export interface WorkCalendar {
  /** Shifts by weekday, Sunday first, each day's in order. */
  readonly week: readonly (readonly Shift[])[];
  /** Days that differ, by day number: no shifts for a holiday. */
  readonly exceptions: ReadonlyMap<number, readonly Shift[]>;
}

export interface Interval {
  readonly from: Instant;
  readonly to: Instant;
}

/** Sunday is 0. Day 1 of the worksheet's count is a Sunday as Excel counts, which is true from 1 March 1900 on. */
export const weekday = (day: number): number => (((day - 1) % DAYS_PER_WEEK) + DAYS_PER_WEEK) % DAYS_PER_WEEK;

export const dayOf = (at: Instant): number => Math.floor(at / SECONDS_PER_DAY);

export const shiftsOf = (calendar: WorkCalendar, day: number): readonly Shift[] =>
  calendar.exceptions.get(day) ?? calendar.week[weekday(day)] ?? [];

/** Working intervals in order from an instant on, never overlapping; ends when `lastDay` has begun its last shift. */
export function* intervalsFrom(calendar: WorkCalendar, start: Instant, lastDay: number): Generator<Interval> {
  let worked: number = start;
  // A night shift of the day before may still run.
  for (let day = dayOf(start) - 1; day <= lastDay; day++) {
    for (const { from, to } of shiftsOf(calendar, day)) {
      const begin = Math.max(day * SECONDS_PER_DAY + from, worked);
      const end = day * SECONDS_PER_DAY + to;
      if (end <= begin) continue;
      worked = end;
      yield { from: instant(begin), to: instant(end) };
    }
  }
}

/** The same calendar with every working day longer by so much: overtime after its last shift. */
export function withOvertime(calendar: WorkCalendar, extra: number): WorkCalendar {
  const longer = (shifts: readonly Shift[]): readonly Shift[] => {
    const last = shifts.at(-1);
    return last === undefined ? shifts : [...shifts.slice(0, -1), { from: last.from, to: last.to + extra }];
  };
  return {
    week: calendar.week.map(longer),
    exceptions: new Map([...calendar.exceptions].map(([day, shifts]) => [day, longer(shifts)])),
  };
}
