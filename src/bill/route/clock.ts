/** A station in time: its calendar and queue, from a start. */
import type { MachineTime, MachineTimes } from "../../calc/route/problem.ts";
import { type Instant, instant, type WorkCalendar } from "../../calc/schedule/calendar.ts";
import { finish, workBetween } from "../../calc/schedule/finish.ts";
import { seconds } from "../../calc/time/seconds.ts";
import { type CalendarRow, calendarOf } from "../nouns/calendar.ts";
import { findStation, type Station, stationNamed } from "../nouns/station.ts";

class StationClock implements MachineTime {
  readonly calendar: WorkCalendar;

  constructor(
    readonly station: Station,
    rows: readonly CalendarRow[],
    readonly start: Instant,
  ) {
    this.calendar = calendarOf(rows, station.name);
  }

  /** When so many seconds of work are done behind the queue. */
  finish = (load: number): Instant => finish(this.start, seconds(this.station.queue + load), this.calendar);

  /** Seconds of work it can do by then behind the queue. */
  capacity = (by: number): number => workBetween(this.start, instant(by), this.calendar) - this.station.queue;

  /** The same, not begun before something else is there. */
  finishAfter(first: number, load: number): Instant {
    const free = this.station.queue > 0 ? finish(this.start, this.station.queue, this.calendar) : this.start;
    return finish(instant(Math.max(first, free)), seconds(load), this.calendar);
  }
}

export function routeShop(stations: readonly Station[], rows: readonly CalendarRow[], start: Instant): MachineTimes {
  const clock = (name: string) => new StationClock(stationNamed(name, stations), rows, start);
  // Where the table has no brake nothing of the bill is bent: the times of its lines have asked for it before.
  const brake = findStation("Brake", stations) && clock("Brake");
  const idle: MachineTime = { finish: () => start, capacity: () => 0 };
  const named = (name: string) => (findStation(name, stations) ? clock(name) : idle);
  return {
    shear: oncePerLoad(named("Shear")),
    waterjet: oncePerLoad(named("Waterjet")),
    brake: { finish: (first, load) => brake?.finishAfter(first, load) ?? first },
  };
}

/** The same loads are asked for again and again while a route is searched. */
function oncePerLoad({ finish, capacity }: MachineTime): MachineTime {
  const known = new Map<number, number>();
  return {
    capacity,
    finish: (load) => {
      let at = known.get(load);
      if (at === undefined) {
        at = finish(load);
        known.set(load, at);
      }
      return at;
    },
  };
}
