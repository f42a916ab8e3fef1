import {
  DAYS_PER_WEEK,
  SECONDS_PER_DAY,
  type Shift,
  type WorkCalendar,
  weekday,
} from "../../calc/schedule/calendar.ts";
import type { CrewSpan } from "../../calc/schedule/floor/problem.ts";

/** When the shop works: a shift of a weekday, or of one day that differs; for all stations or for one. */
export interface CalendarRow {
  /** Weekday, Sunday 0, or a date's day number. */
  readonly day: { readonly weekday: number } | { readonly date: number };
  /** undefined: closed. */
  readonly shift: Shift | undefined;
  readonly station: string | undefined;
  /** Who is there in this shift, at all stations together; undefined: nobody said. */
  readonly people?: number | undefined;
}

/** The calendar of one station, whose own rows come before the general ones; undefined for work that belongs to none. */
export function calendarOf(rows: readonly CalendarRow[], station?: string): WorkCalendar {
  const own = rows.filter((row) => row.station !== undefined && row.station.toLowerCase() === station?.toLowerCase());
  const general = rows.filter((row) => row.station === undefined);
  const weekly = (of: readonly CalendarRow[]) => of.filter(({ day }) => "weekday" in day);
  const ruling = weekly(own).length > 0 ? weekly(own) : weekly(general);
  const week = Array.from({ length: DAYS_PER_WEEK }, (_, index) =>
    inOrder(ruling.filter(({ day }) => "weekday" in day && day.weekday === index)),
  );
  const exceptions = new Map<number, readonly Shift[]>();
  for (const part of [general, own]) {
    const dated = new Map<number, CalendarRow[]>();
    for (const row of part) if ("date" in row.day) dated.set(row.day.date, [...(dated.get(row.day.date) ?? []), row]);
    for (const [date, of] of dated) exceptions.set(date, inOrder(of));
  }
  return { week, exceptions };
}

const inOrder = (rows: readonly CalendarRow[]): Shift[] =>
  rows.flatMap(({ shift }) => (shift ? [shift] : [])).sort((a, b) => a.from - b.from);

/**
 * Who is there on a day at all stations together: spans from midnight to midnight. The shifts of the whole shop say so, and
 * where none of them is worked those of the stations that work alone; Infinity where nobody does, or one has no number.
 */
export function peopleOn(rows: readonly CalendarRow[], day: number): readonly CrewSpan[] {
  const shiftsOn = (on: number) => {
    const isDated = rows.some((row) => row.station === undefined && "date" in row.day && row.day.date === on);
    return rows.flatMap(({ shift, station, day: own, people = Infinity }) => {
      const isOn = "date" in own ? own.date === on : own.weekday === weekday(on) && (station !== undefined || !isDated);
      return shift && isOn ? [{ ...shiftFrom(on, shift), people, isOfShop: station === undefined }] : [];
    });
  };
  // A night shift of the day before may still run.
  const shifts = [...shiftsOn(day - 1), ...shiftsOn(day)];
  const [first, next] = [day * SECONDS_PER_DAY, (day + 1) * SECONDS_PER_DAY];
  const changes = shifts.flatMap(({ from, to }) => [from, to]).filter((at) => at > first && at < next);
  return [...new Set([first, ...changes.sort((a, b) => a - b)])].map((at) => {
    const there = shifts.filter(({ from, to }) => from <= at && at < to);
    const ofShop = there.filter(({ isOfShop }) => isOfShop);
    const ruling = ofShop.length > 0 ? ofShop : there;
    return { from: at, people: ruling.length === 0 ? Infinity : ruling.reduce((sum, { people }) => sum + people, 0) };
  });
}

const shiftFrom = (day: number, { from, to }: Shift): Shift => ({
  from: day * SECONDS_PER_DAY + from,
  to: day * SECONDS_PER_DAY + to,
});
