import { DAYS_PER_WEEK, type Shift, type WorkCalendar } from "../../calc/schedule/calendar.ts";

/** When the shop works: a shift of a weekday, or of one day that differs; for all stations or for one. */
export interface CalendarRow {
  /** Weekday, Sunday 0, or a date's day number. */
  readonly day: { readonly weekday: number } | { readonly date: number };
  /** undefined: closed. */
  readonly shift: Shift | undefined;
  readonly station: string | undefined;
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
