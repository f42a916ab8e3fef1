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
  /** Of those that stand there; "" where none does. */
  readonly machine?: string;
  readonly time: Seconds;
}

export const VERDICTS = ["in time", "overtime", "second shift", "outside", "breaks it"] as const;
export interface Verdict {
  readonly verdict: (typeof VERDICTS)[number];
  /** The place that decides, with this line's time there. */
  readonly place: string;
  readonly time: Seconds;
  readonly finish: Instant;
  readonly note: string;
  /** When it would be done with the shifts as they are. */
  readonly asItIs: Instant;
  /** Working time of the shop by which it is done sooner, behind the lines before it; undefined: not offered. */
  readonly secondShiftSaves: Seconds | undefined;
  readonly outsideSaves: Seconds | undefined;
}

interface Last {
  readonly place: string;
  readonly time: Seconds;
  readonly done: Instant;
}

/** By how much every working day can be longer. */
export interface Longer {
  readonly overtime: Seconds;
  /** undefined: the shop has nobody for it. */
  readonly secondShift: Seconds | undefined;
}

const NO_TIME = seconds(0);

/**
 * If it must leave by then: lines are taken in the order given, each behind those before it at every place. In time
 * with the shifts as they are; else in overtime, every working day so much longer; else with a second shift; else with one
 * of its tasks sent to a vendor at the start; else it breaks the time. What goes outside makes room for the lines after
 * it. Vendor days are working days of the shop (chosen). Loads and queues laid into the shifts (derived).
 */
export class Deadline {
  readonly #loads = new Map<string, number>();
  readonly #machines = new Map<string, Map<string, Seconds>>();

  constructor(
    readonly start: Instant,
    readonly due: Instant,
    /** The shop's own shifts, by which vendor days are counted. */
    readonly shop: WorkCalendar,
    readonly longer: Longer,
  ) {}

  /**
   * @param vendorDays of finishes and other work that only a vendor does, after everything in the shop.
   * @param due when these must leave, where it is not the due time of all.
   */
  take(tasks: readonly Task[], vendorDays: number, due: Instant = this.due): Verdict {
    const after = (done: Instant) => afterWorkingDays(done, vendorDays, this.shop);
    const away = vendorDays > 0 ? `then ${vendorDaysInWords(vendorDays)}` : "";
    const { overtime, secondShift } = this.longer;
    const regular = this.#last(tasks, NO_TIME);
    const isLate = after(regular.done) > due;
    const second = secondShift && isLate ? this.#last(tasks, secondShift) : undefined;
    const sent = isLate ? this.#sent(tasks) : [];
    const soonest = sent.reduce<Last | undefined>((a, { last }) => (a && a.done <= last.done ? a : last), undefined);
    const saves = (last: Last | undefined) => last && workBetween(after(last.done), after(regular.done), this.shop);
    const answer = (verdict: Verdict["verdict"], last: Last, kept: readonly Task[], note = ""): Verdict => {
      for (const { place, time, machine = "" } of kept) {
        this.#loads.set(place.name, this.load(place) + time);
        const own = this.machines(place);
        this.#machines.set(place.name, own.set(machine, seconds((own.get(machine) ?? 0) + time)));
      }
      return {
        verdict,
        place: last.place,
        time: last.time,
        finish: after(last.done),
        note: [note, away].filter((text) => text !== "").join("; "),
        asItIs: after(regular.done),
        secondShiftSaves: saves(second),
        outsideSaves: saves(soonest),
      };
    };
    if (!isLate) return answer("in time", regular, tasks);
    const longer = this.#last(tasks, overtime);
    if (after(longer.done) <= due) return answer("overtime", longer, tasks);
    if (second && after(second.done) <= due) return answer("second shift", second, tasks);
    const intime = sent.find(({ last }) => after(last.done) <= due);
    return intime ? answer("outside", intime.last, intime.rest, intime.note) : answer("breaks it", regular, tasks);
  }

  /** One of its tasks sent to a vendor, the rest as it is and then in overtime. */
  #sent(tasks: readonly Task[]): { readonly last: Last; readonly rest: readonly Task[]; readonly note: string }[] {
    return tasks.flatMap((away) => {
      const { vendorDays: days, name } = away.place;
      if (days === undefined) return [];
      const rest = tasks.filter((other) => other !== away);
      const back: Last = { place: name, time: away.time, done: afterWorkingDays(this.start, days, this.shop) };
      return [NO_TIME, this.longer.overtime].map((extra) => {
        const left = rest.length > 0 ? this.#last(rest, extra) : back;
        const late = extra > 0 ? ", the rest in overtime" : "";
        return {
          last: left.done > back.done ? left : back,
          rest,
          note: `${name} outside, ${vendorDaysInWords(days)}${late}`,
        };
      });
    });
  }

  /** What the lines so far have brought there. */
  load = ({ name }: Place): Seconds => seconds(this.#loads.get(name) ?? 0);

  /** The same by the machines that stand there. */
  machines = ({ name }: Place): Map<string, Seconds> => this.#machines.get(name) ?? new Map();

  /** When a place has done its queue and what the lines so far have brought. */
  finishOf = (place: Place): Instant => finish(this.start, seconds(place.queue + this.load(place)), place.calendar);

  /** Hours of a place up to the due time: as they are, what overtime adds, and what is still missing. */
  hours(place: Place): { readonly available: Seconds; readonly overtime: Seconds; readonly short: Seconds } {
    const available = workBetween(this.start, this.due, place.calendar);
    const longer = workBetween(this.start, this.due, withOvertime(place.calendar, this.longer.overtime));
    return {
      available,
      overtime: seconds(longer - available),
      short: seconds(Math.max(0, place.queue + this.load(place) - longer)),
    };
  }

  /** Where a line comes out last, behind what is there already. */
  #last(tasks: readonly Task[], extra: Seconds): Last {
    const ends = tasks.map(({ place, time }): Last => {
      const calendar = extra > 0 ? withOvertime(place.calendar, extra) : place.calendar;
      const load = seconds(place.queue + this.load(place) + time);
      return { place: place.name, time, done: finish(this.start, load, calendar) };
    });
    return ends.reduce((a, b) => (b.done > a.done ? b : a));
  }
}
