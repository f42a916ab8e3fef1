/** The people of the shop as its week has them, and the hours in which there are enough of them for a step. */
import { dayOf, type Interval, instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import type { CrewSpan } from "../../calc/schedule/floor/problem.ts";
import { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { type CalendarRow, peopleOn } from "../nouns/calendar.ts";
import type { Shop } from "../nouns/shop.ts";
import { calendarFor } from "./ruling-shop.ts";
import type { WeekOptions } from "./week.ts";

const LOOKED = 28; // days (chosen): people who are only there later than this count as never there

export interface Crew {
  readonly spans: () => Iterator<CrewSpan>;
  /** How many of the people wanted at a station are ever there in its shifts, and the clock of those times. */
  readonly at: (station: string, wanted: number) => { readonly people: number; readonly clock: WorkClock };
}

/** Some shift says how many people are there. */
export const isCounted = (calendar: readonly CalendarRow[]): boolean =>
  calendar.some(({ shift, people }) => shift && people !== undefined);

/** undefined: nobody wrote how many people are there. */
export function crewOf({ calendar }: Pick<Shop, "calendar">, options: WeekOptions): Crew | undefined {
  if (!isCounted(calendar)) return undefined;
  const { now, overtime, further } = options;
  const more = further?.get("") ?? 0;
  const longer = calendar.map((row) => longerLast(row, calendar, overtime?.get("") ?? 0));
  const known = new Map<number, readonly CrewSpan[]>();
  const spansOn = (day: number): readonly CrewSpan[] => {
    const found = known.get(day) ?? peopleOn(longer, day).map((each) => ({ ...each, people: each.people + more }));
    known.set(day, found);
    return found;
  };
  const within = (people: number, { from, to }: Interval): Interval[] => {
    const found: Interval[] = [];
    for (let day = dayOf(from); day * SECONDS_PER_DAY < to; day++)
      spansOn(day).forEach((span, i, own) => {
        const begin = Math.max(from, span.from);
        const end = Math.min(to, own[i + 1]?.from ?? (day + 1) * SECONDS_PER_DAY);
        if (span.people >= people && begin < end) found.push({ from: instant(begin), to: instant(end) });
      });
    return found;
  };
  const clocks = new Map<string, ReturnType<Crew["at"]>>();
  const made = (station: string, wanted: number): ReturnType<Crew["at"]> => {
    const worked = calendarFor({ calendar }, station, options);
    const times = new WorkClock(worked, now).spans(now, now + LOOKED * SECONDS_PER_DAY);
    const has = (people: number) =>
      times.some(([from, to]) => within(people, { from: instant(from), to: instant(to) }).length > 0);
    let people = wanted;
    while (people > 1 && !has(people)) people--;
    return { people, clock: new WorkClock(worked, now, (time) => within(people, time)) };
  };
  return {
    *spans() {
      for (let day = dayOf(now); ; day++) yield* spansOn(day);
    },
    at: (station, wanted) => {
      const key = `${wanted} ${station.toLowerCase()}`;
      const found = clocks.get(key) ?? made(station, wanted);
      clocks.set(key, found);
      return found;
    },
  };
}

/** Whoever stays longer belongs to the last shift of the day. */
function longerLast(row: CalendarRow, rows: readonly CalendarRow[], extra: number): CalendarRow {
  const { shift, station, day } = row;
  if (!shift || extra === 0) return row;
  const isLast = rows.every(
    (other) => other.station !== station || !isSame(other.day, day) || (other.shift?.from ?? 0) <= shift.from,
  );
  return isLast ? { ...row, shift: { ...shift, to: shift.to + extra } } : row;
}

const isSame = (a: CalendarRow["day"], b: CalendarRow["day"]): boolean =>
  "date" in a ? "date" in b && a.date === b.date : "weekday" in b && a.weekday === b.weekday;
