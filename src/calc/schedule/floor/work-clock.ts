import { noAnswer } from "../../../units/refusal.ts";
import {
  dayOf,
  type Instant,
  type Interval,
  instant,
  intervalsFrom,
  SECONDS_PER_DAY,
  shiftsOf,
  type WorkCalendar,
} from "../calendar.ts";
import { FURTHEST_DAYS } from "../finish.ts";
import { afterWorkingDays, beforeWorkingDays } from "../working-days.ts";
import type { Clock } from "./problem.ts";

/** A clock that never stops, as in textbooks. */
export const steadyClock: Clock = {
  finish: (start, work) => start + work,
  latest: (finish, work) => finish - work,
  spans: (from, to) => [[from, to]],
};

/**
 * A vendor: its work is whole working days of the shop. What comes on a day off counts from the next working day's
 * midnight, so that what comes later is never back sooner.
 */
export const vendorClock = (calendar: WorkCalendar): Clock => ({
  finish: (start, days) => {
    const isOff = shiftsOf(calendar, dayOf(instant(start))).length === 0;
    const next = isOff ? dayOf(afterWorkingDays(instant(start), 1, calendar)) * SECONDS_PER_DAY : start;
    return afterWorkingDays(instant(next), days, calendar);
  },
  latest: (finish, days) => beforeWorkingDays(instant(finish), days, calendar),
  spans: steadyClock.spans,
});

/**
 * The working time of a calendar laid out once, so that each question is a search among intervals: a schedule asks
 * millions. Says the same as `finish` and `latestStart`. Nothing is known before `start`: work that would have had to
 * begin earlier is answered as if the shop never closed.
 */
export class WorkClock implements Clock {
  readonly #from: number[] = [];
  readonly #to: number[] = [];
  /** Working time before each interval. */
  readonly #before: number[] = [];
  #asked = 0;
  readonly #more: Iterator<Interval>;

  constructor(
    calendar: WorkCalendar,
    readonly start: Instant,
    /** Of each working time the parts that count, in order; usual: all of it. */
    within: (interval: Interval) => readonly Interval[] = (interval) => [interval],
  ) {
    this.#more = partsOf(intervalsFrom(calendar, start, dayOf(start) + FURTHEST_DAYS), within);
    this.#grow();
  }

  finish(start: number, work: number): number {
    if (work <= 0) return start;
    let i = this.#at(start);
    const done = this.#before[i]! + Math.max(0, start - this.#from[i]!) + work;
    while (this.#before[i]! + this.#to[i]! - this.#from[i]! < done) if (++i === this.#from.length) this.#grow();
    return this.#from[i]! + done - this.#before[i]!;
  }

  latest(finish: number, work: number): number {
    const left = this.workUntil(finish) - work;
    if (left < 0) return Math.min(finish, this.start) + left;
    let i = this.#at(finish);
    while (i > 0 && this.#before[i]! > left) i--;
    return this.#from[i]! + left - this.#before[i]!;
  }

  spans(from: number, to: number): readonly (readonly [from: number, to: number])[] {
    const found: (readonly [number, number])[] = [];
    for (let i = this.#at(from); this.#from[i]! < to; i++) {
      found.push([Math.max(from, this.#from[i]!), Math.min(to, this.#to[i]!)]);
      if (i + 1 === this.#from.length) this.#grow();
    }
    return found;
  }

  /** Working time from the start until then. */
  workUntil(at: number): number {
    const i = this.#at(at);
    return this.#before[i]! + Math.max(0, at - this.#from[i]!);
  }

  /** The first working moment at or after this one. */
  opens(at: number): number {
    return Math.max(at, this.#from[this.#at(at)]!);
  }

  /** The first interval that ends after this moment. */
  #at(moment: number): number {
    // Most questions are about the interval of the one before.
    const asked = this.#asked;
    if (this.#to[asked]! > moment && (asked === 0 || this.#to[asked - 1]! <= moment)) return asked;
    while (this.#to.at(-1)! <= moment) this.#grow();
    let [low, high] = [0, this.#to.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#to[middle]! > moment) high = middle;
      else low = middle + 1;
    }
    this.#asked = low;
    return low;
  }

  #grow(): void {
    const next = this.#more.next();
    if (next.done)
      throw noAnswer(
        "calendar",
        "one with working time enough",
        "too little",
        "give Start and End of the weekdays that are worked",
      );
    const last = this.#from.length - 1;
    this.#before.push(last < 0 ? 0 : this.#before[last]! + this.#to[last]! - this.#from[last]!);
    this.#from.push(next.value.from);
    this.#to.push(next.value.to);
  }
}

function* partsOf(intervals: Iterable<Interval>, within: (interval: Interval) => readonly Interval[]) {
  for (const interval of intervals) yield* within(interval);
}
