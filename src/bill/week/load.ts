/** What every machine has to do on every day, against what it could. */
import { dayOf, type Instant, instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import type { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { type CalendarRow, peopleOn } from "../nouns/calendar.ts";
import type { OpenStep } from "./open-step.ts";
import type { Placed, StationDay } from "./week.ts";

/** Days without work of the machine are left out. */
export function loadByDay(
  now: Instant,
  steps: readonly Placed<OpenStep>[],
  machines: readonly { readonly name: string; readonly count: number }[],
  clockOf: (station: string) => WorkClock | undefined,
): StationDay[] {
  return machines.flatMap(({ name, count }) => {
    const own = steps.filter(({ work, machine }) => work !== undefined && machine === name);
    const clock = own[0] && clockOf(own[0].station.name);
    if (!clock || count === Infinity) return [];
    const work = (from: number, to: number): number => (to > from ? clock.workUntil(to) - clock.workUntil(from) : 0);
    const first = Math.floor(now / SECONDS_PER_DAY);
    const last = Math.floor(Math.max(...own.map(({ finish }) => finish - 1)) / SECONDS_PER_DAY);
    return Array.from({ length: last - first + 1 }, (_, i): StationDay => {
      const [from, to] = [(first + i) * SECONDS_PER_DAY, (first + i + 1) * SECONDS_PER_DAY];
      const loads = own.map(({ begins, finish, work: done }) => {
        const load = work(Math.max(from, begins), Math.min(to, finish));
        return { load, people: load * done!.people };
      });
      return {
        machine: name,
        station: own[0]!.station.name,
        day: instant(from),
        available: count * work(Math.max(from, now), to),
        load: loads.reduce((sum, { load }) => sum + load, 0),
        people: loads.reduce((sum, { people }) => sum + people, 0),
      };
    }).filter(({ available, load }) => available > 0 || load > 0);
  });
}

/** Days on which the stations together need more of people than the shifts of the shop have. */
export function lackingPeople(days: readonly StationDay[], calendar: readonly CalendarRow[], now: Instant) {
  const needed = new Map<Instant, number>();
  for (const { day, people } of days) needed.set(day, (needed.get(day) ?? 0) + people);
  return [...needed]
    .sort(([a], [b]) => a - b)
    .flatMap(([day, seconds]) => {
      const there = peopleOn(calendar, dayOf(day), now);
      return there === undefined || seconds <= there ? [] : [{ day, needed: seconds, there }];
    });
}
