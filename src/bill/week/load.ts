/** What every machine has to do on every day, against what it could. */
import { type Instant, instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import type { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import type { OpenStep } from "./open-step.ts";
import type { Placed, StationDay } from "./week.ts";

interface Clocks {
  /** Of each step, and of a station. */
  readonly clocks: readonly (WorkClock | undefined)[];
  readonly clockOf: (station: string) => WorkClock | undefined;
}

/** Days without work of the machine are left out. */
export function loadByDay(
  now: Instant,
  steps: readonly Placed<OpenStep>[],
  machines: readonly { readonly name: string; readonly count: number }[],
  { clocks, clockOf }: Clocks,
): StationDay[] {
  const worked = (clock: WorkClock, from: number, to: number): number =>
    to > from ? clock.workUntil(to) - clock.workUntil(from) : 0;
  return machines.flatMap(({ name, count }) => {
    const own = steps.flatMap((step, i) => {
      const clock = clocks[i];
      return clock && step.machine === name ? [{ ...step, clock }] : [];
    });
    const station = own[0]?.station.name ?? "";
    const clock = clockOf(station);
    if (!clock || count === Infinity) return [];
    const first = Math.floor(now / SECONDS_PER_DAY);
    const last = Math.floor(Math.max(...own.map(({ finish }) => finish - 1)) / SECONDS_PER_DAY);
    return Array.from({ length: last - first + 1 }, (_, i): StationDay => {
      const [from, to] = [(first + i) * SECONDS_PER_DAY, (first + i + 1) * SECONDS_PER_DAY];
      const loads = own.map(({ begins, ready, finish, setUp, work, clock: its }) => {
        const within = (begin: number, end: number) => worked(its, Math.max(from, begin), Math.min(to, end));
        // A set-up may be done some time before its run.
        const load = (setUp > 0 ? within(begins, its.finish(begins, setUp)) : 0) + within(ready, finish);
        return { load, people: load * (work?.people ?? 0) };
      });
      return {
        machine: name,
        station,
        day: instant(from),
        available: count * worked(clock, Math.max(from, now), to),
        load: loads.reduce((sum, { load }) => sum + load, 0),
        people: loads.reduce((sum, { people }) => sum + people, 0),
      };
    }).filter(({ available, load }) => available > 0 || load > 0);
  });
}
