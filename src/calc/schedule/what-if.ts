import { type Seconds, seconds } from "../time/seconds.ts";
import { type Instant, type WorkCalendar, withOvertime } from "./calendar.ts";
import { finish, workBetween } from "./finish.ts";
import { afterWorkingDays, vendorDaysInWords } from "./working-days.ts";

/** A station as a deadline meets it. */
export interface Place {
  readonly name: string;
  readonly calendar: WorkCalendar;
  readonly queue: Seconds;
  /** A vendor could do its work in so many working days; undefined: none does. */
  readonly vendorDays: number | undefined;
}

/** What one line has to do there, set-up included. */
export interface Task {
  readonly place: Place;
  readonly time: Seconds;
}

export const VERDICTS = ["in time", "overtime", "outside", "breaks it"] as const;
export interface Verdict {
  readonly verdict: (typeof VERDICTS)[number];
  /** The place that decides, with this line's time there. */
  readonly place: string;
  readonly time: Seconds;
  readonly finish: Instant;
  readonly note: string;
}

interface Last {
  readonly place: string;
  readonly time: Seconds;
  readonly done: Instant;
}

/**
 * If it must leave by then: lines are taken in the order given, each behind those before it at every place. In time
 * with the shifts as they are; else in overtime, every working day so much longer; else with one of its tasks sent to a
 * vendor at the start; else it breaks the time. What goes outside makes room for the lines after it. Vendor days are
 * working days of the shop (chosen). Loads and queues laid into the shifts (derived).
 */
export class Deadline {
  readonly #loads = new Map<string, number>();

  constructor(
    readonly start: Instant,
    readonly due: Instant,
    /** The shop's own shifts, by which vendor days are counted. */
    readonly shop: WorkCalendar,
    readonly overtime: Seconds,
  ) {}

  /**
   * @param vendorDays of finishes and other work that only a vendor does, after everything in the shop.
   * @param due when these must leave, where it is not the due time of all.
   */
  take(tasks: readonly Task[], vendorDays: number, due: Instant = this.due): Verdict {
    const after = (done: Instant) => afterWorkingDays(done, vendorDays, this.shop);
    const away = vendorDays > 0 ? `then ${vendorDaysInWords(vendorDays)}` : "";
    const answer = (verdict: Verdict["verdict"], last: Last, kept: readonly Task[], note = ""): Verdict => {
      for (const { place, time } of kept) this.#loads.set(place.name, this.load(place) + time);
      const said = [note, away].filter((text) => text !== "").join("; ");
      return { verdict, place: last.place, time: last.time, finish: after(last.done), note: said };
    };
    const regular = this.#last(tasks, false);
    if (after(regular.done) <= due) return answer("in time", regular, tasks);
    const longer = this.#last(tasks, true);
    if (after(longer.done) <= due) return answer("overtime", longer, tasks);
    for (const sent of tasks) {
      const { vendorDays: days, name } = sent.place;
      if (days === undefined) continue;
      const rest = tasks.filter((other) => other !== sent);
      const back: Last = { place: name, time: sent.time, done: afterWorkingDays(this.start, days, this.shop) };
      for (const overtime of [false, true]) {
        const left = rest.length > 0 ? this.#last(rest, overtime) : back;
        const last = left.done > back.done ? left : back;
        if (after(last.done) > due) continue;
        return answer(
          "outside",
          last,
          rest,
          `${name} outside, ${vendorDaysInWords(days)}${overtime ? ", the rest in overtime" : ""}`,
        );
      }
    }
    return answer("breaks it", regular, tasks);
  }

  /** What the lines so far have brought there. */
  load = ({ name }: Place): Seconds => seconds(this.#loads.get(name) ?? 0);

  /** When a place has done its queue and what the lines so far have brought. */
  finishOf = (place: Place): Instant => finish(this.start, seconds(place.queue + this.load(place)), place.calendar);

  /** Hours of a place up to the due time: as they are, what overtime adds, and what is still missing. */
  hours(place: Place): { readonly available: Seconds; readonly overtime: Seconds; readonly short: Seconds } {
    const available = workBetween(this.start, this.due, place.calendar);
    const longer = workBetween(this.start, this.due, withOvertime(place.calendar, this.overtime));
    return {
      available,
      overtime: seconds(longer - available),
      short: seconds(Math.max(0, place.queue + this.load(place) - longer)),
    };
  }

  /** Where a line comes out last, behind what is there already. */
  #last(tasks: readonly Task[], overtime: boolean): Last {
    const ends = tasks.map(({ place, time }): Last => {
      const calendar = overtime ? withOvertime(place.calendar, this.overtime) : place.calendar;
      const load = seconds(place.queue + this.load(place) + time);
      return { place: place.name, time, done: finish(this.start, load, calendar) };
    });
    return ends.reduce((a, b) => (b.done > a.done ? b : a));
  }
}
