/** Where a time stands across the board: a column a day from the first hour that is worked to the last, days without anything narrow. */

import type { Instant } from "../../../bill/pictures.ts";
import { firstOf, itemAt, lastOf } from "../../../units/certain.ts";
import type { WeekBoard } from "./protocol.ts";

const DAY = 86_400; // seconds, by definition
const HOUR = 3600; // seconds, by definition
const NARROW = 0.3; // of a day's column (chosen)
/** A bar is put down on a quarter of an hour (chosen). */
const SNAP = 900;

export interface DayColumn {
  readonly day: Instant;
  readonly isOpen: boolean;
  /** Percent of the board. */
  readonly left: number;
  readonly width: number;
}

const midnight = (at: number): number => Math.floor(at / DAY) * DAY;

export class TimeScale {
  readonly days: readonly DayColumn[];
  /** How many whole days wide it is. */
  readonly columns: number;
  /** Seconds after midnight. */
  readonly #from: number;
  readonly #to: number;

  constructor({ now, jobs, days }: Pick<WeekBoard, "now" | "jobs" | "days">) {
    const bars = jobs.flatMap((job) => job.bars);
    const dues = jobs.flatMap(({ deliveries }) => deliveries.flatMap(({ due }) => (due === undefined ? [] : [due])));
    const here = bars.filter(({ isAway }) => !isAway);
    // The end of a day is its own, not the next one's beginning.
    const ends = [...here.map(({ finish }) => finish), ...dues].map((at) => at - midnight(at - 1));
    this.#from = Math.floor(Math.min(...here.map(({ begins }) => begins - midnight(begins)), DAY - HOUR) / HOUR) * HOUR;
    this.#to = Math.max(Math.ceil(Math.max(...ends, 0) / HOUR) * HOUR, this.#from + HOUR);
    const last = Math.max(now, ...bars.map(({ finish }) => finish), ...dues);
    const open = new Set([
      ...days.map(({ day }) => day as number),
      ...bars.map(({ begins }) => midnight(begins)),
      ...dues.map(midnight),
    ]);
    const all: number[] = [];
    for (let day = midnight(now); day <= last; day += DAY) all.push(day);
    const total = all.reduce((sum, day) => sum + (open.has(day) ? 1 : NARROW), 0);
    this.columns = total;
    let left = 0;
    this.days = all.map((day) => {
      const isOpen = open.has(day);
      const column = { day: day as Instant, isOpen, left, width: ((isOpen ? 1 : NARROW) * 100) / total };
      left += column.width;
      return column;
    });
  }

  /** Percent of the board. */
  at(time: number): number {
    const last = lastOf(this.days);
    const { day, left, width } = this.days.findLast((each) => each.day <= time) ?? firstOf(this.days);
    const part = (time - day - this.#from) / (this.#to - this.#from);
    return Math.min(left + width * Math.min(Math.max(part, 0), 1), last.left + last.width);
  }

  time(percent: number): Instant {
    const open = this.days.filter(({ isOpen }) => isOpen);
    const { day, left, width } = open.findLast((each) => each.left <= percent) ?? firstOf(open);
    const part = Math.min(Math.max((percent - left) / width, 0), 1);
    return (day + Math.round((this.#from + part * (this.#to - this.#from)) / SNAP) * SNAP) as Instant;
  }

  /** So many worked hours on, or a whole day. */
  along(time: number, by: number | "day" | "day before"): Instant {
    const open = this.days.filter(({ isOpen }) => isOpen);
    const at = Math.max(
      0,
      open.findLastIndex(({ day }) => day <= time),
    );
    const width = this.#to - this.#from;
    const seconds = typeof by === "number" ? by * HOUR : by === "day" ? width : -width;
    const of = Math.min(Math.max(time - itemAt(open, at).day - this.#from, 0), width);
    const on = Math.min(Math.max(at * width + of + seconds, 0), open.length * width - SNAP);
    const [index, rest] = [Math.floor(on / width), on % width];
    return (itemAt(open, index).day + this.#from + Math.round(rest / SNAP) * SNAP) as Instant;
  }
}
