import {
  DAYS_PER_WEEK,
  SECONDS_PER_DAY,
  type Shift,
  type WorkCalendar,
  weekday,
} from "../../calc/schedule/calendar.ts";

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

/** Seconds of people on a day by the shifts of the whole shop, none before an instant; undefined where a shift has no number, or none is worked: a station alone may be. */
export function peopleOn(rows: readonly CalendarRow[], day: number, from: number): number | undefined {
  const general = rows.filter(({ station }) => station === undefined);
  const dated = general.filter((row) => "date" in row.day && row.day.date === day);
  const weekly = general.filter((row) => "weekday" in row.day && row.day.weekday === weekday(day));
  const worked = (dated.length > 0 ? dated : weekly).flatMap(({ shift, people }) => (shift ? [{ shift, people }] : []));
  if (worked.length === 0 || worked.some(({ people }) => people === undefined)) return undefined;
  const since = from - day * SECONDS_PER_DAY;
  return worked.reduce(
    (sum, { shift, people = 0 }) => sum + people * Math.max(0, shift.to - Math.max(shift.from, since)),
    0,
  );
}
