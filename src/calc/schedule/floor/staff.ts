import { itemAt } from "../../../units/certain.ts";
import type { Clock, CrewSpan } from "./problem.ts";

/** The people of a floor as work takes them: how many are free from each moment to the next. */
export class Staff {
  readonly #spans: Iterator<CrewSpan>;
  /** As the calendar says, and less what is taken; each holds from its moment to the next one's. */
  readonly #given: CrewSpan[] = [];
  #at: number[] = [];
  #free: number[] = [];
  #end = Number.NEGATIVE_INFINITY;

  constructor(crew: () => Iterator<CrewSpan>) {
    this.#spans = crew();
    this.#grow();
  }

  /** Nobody works. */
  clear(): void {
    this.#at = this.#given.map(({ from }) => from);
    this.#free = this.#given.map(({ people }) => people);
  }

  /** The first moment from then on at which so many are free for all of the work, in the hours of the clock; they are taken. */
  take(clock: Clock, from: number, work: number, people: number): number {
    if (work <= 0 || people === 0) return from;
    let begin = from;
    for (;;) {
      const later = this.#freeAgain(clock, begin, clock.finish(begin, work), people);
      if (later === undefined) break;
      begin = later;
    }
    this.occupy(clock, begin, work, people);
    return begin;
  }

  /** Whether so many are free for all of the work begun then. */
  isFree = (clock: Clock, begin: number, work: number, people: number): boolean =>
    this.#freeAgain(clock, begin, clock.finish(begin, work), people) === undefined;

  /** Takes them whether they are free or not; below 0 they are given back. */
  occupy(clock: Clock, begin: number, work: number, people: number): void {
    for (const [from, to] of clock.spans(begin, clock.finish(begin, work))) {
      const last = this.#split(to);
      for (let k = this.#split(from); k < last + 1 && itemAt(this.#at, k) < to; k++)
        this.#free[k] = itemAt(this.#free, k) - people;
    }
  }

  /** Where too few are free within: when that ends; undefined where enough are. */
  #freeAgain(clock: Clock, begin: number, end: number, people: number): number | undefined {
    for (const [from, to] of clock.spans(begin, end)) {
      while (this.#end <= to) this.#grow();
      for (let k = this.#place(from); itemAt(this.#at, k) < to; k++)
        if (itemAt(this.#free, k) < people) return itemAt(this.#at, k + 1);
    }
    return undefined;
  }

  /** The last place that begins at or before this moment. */
  #place(moment: number): number {
    let [low, high] = [0, this.#at.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (itemAt(this.#at, middle) <= moment) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #split(moment: number): number {
    while (this.#end <= moment) this.#grow();
    const k = this.#place(moment);
    if (itemAt(this.#at, k) >= moment) return k;
    this.#at.splice(k + 1, 0, moment);
    this.#free.splice(k + 1, 0, itemAt(this.#free, k));
    return k + 1;
  }

  #grow(): void {
    const { value } = this.#spans.next() as IteratorYieldResult<CrewSpan>;
    this.#given.push(value);
    this.#at.push(value.from);
    this.#free.push(value.people);
    // The last span is known to its end alone, and a place must follow it.
    this.#end = value.from;
  }
}
