/** A bar of the week that somebody moved: what is pinned by it, and what else moves. */

import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { itemAt } from "../../units/certain.ts";
import { showNumber } from "../../units/show.ts";
import { NO_MARKS } from "../nouns/marks.ts";
import type { Shop } from "../nouns/shop.ts";
import { stepKey } from "./open-step.ts";
import { clocksOf } from "./ruling-shop.ts";
import type { WeekJob } from "./steps.ts";
import type { PlannedStep, Week, WeekJobDates } from "./week.ts";

export interface MovedBar {
  readonly job: string;
  /** The line and the station of the bar; undefined: all of the job, which keeps the order of its lines. */
  readonly step: { readonly row: number; readonly station: string } | undefined;
  /** When its first set-up or run shall begin. */
  readonly to: Instant;
}

export interface PinnedStep {
  readonly row: number;
  readonly part: string;
  readonly station: string;
  readonly at: Instant;
  /** The bar was moved to a time without a shift: the pin stands at the next one. */
  readonly isClosed: boolean;
}

/** What a bar pins: itself, or, of a job, the first open step of each of its lines, as much later or earlier as the bar. Work that has begun stays. A pin falls into the shifts. */
export function pinsOf(week: Week, { job, step, to }: MovedBar, shop: Pick<Shop, "calendar">): PinnedStep[] {
  const own = week.steps.filter((each) => itemAt(week.jobs, each.job).name === job && !each.isStarted);
  const bar = own.filter((each) => !step || (each.line.row === step.row && each.station.name === step.station));
  const clockOf = clocksOf(shop, { now: week.now });
  const by = to - Math.min(...bar.map(({ begins }) => begins));
  const firsts = new Map<number, PlannedStep>();
  // In the order of the work: a brake may be set up before the sheet is cut.
  for (const each of bar) if (!firsts.has(each.line.row)) firsts.set(each.line.row, each);
  return [...firsts.values()].map(({ line: { row, part }, station: { name }, work, begins }) => {
    const asked = Math.round(Math.max(week.now, begins + by) / MINUTE) * MINUTE; // as a mark can say it
    const at = (work && clockOf(name)?.opens(asked)) ?? asked;
    return { row, part, station: name, at: instant(at), isClosed: at !== asked };
  });
}
const MINUTE = 60; // seconds, by definition

/** The jobs with these pins beside their marks; an earlier pin of the same line and station is replaced. */
export const withPins = (
  jobs: readonly WeekJob[],
  name: string,
  pins: readonly Omit<PinnedStep, "isClosed">[],
): WeekJob[] =>
  jobs.map((job) => {
    if (job.name !== name) return job;
    const marks = new Map(job.marks);
    for (const { row, station, at } of pins) {
      const before = marks.get(row) ?? NO_MARKS;
      const others = before.pins.filter((pin) => pin.station.toLowerCase() !== station.toLowerCase());
      marks.set(row, { ...before, pins: [...others, { station, at }] });
    }
    return { ...job, marks };
  });

export interface MovedJob {
  readonly name: string;
  /** Steps of it that begin at another time. */
  readonly steps: number;
  readonly finish: readonly [before: Instant, after: Instant];
  readonly late: readonly [before: number, after: number];
}

/** A week as it stood: what is compared with the next one. */
export interface Stood {
  readonly begins: ReadonlyMap<string, Instant>;
  readonly jobs: readonly Pick<WeekJobDates, "name" | "finish" | "late">[];
}
export const stoodOf = ({ jobs, steps }: Week): Stood => ({
  begins: new Map(steps.map((step) => [stepKey(jobs, step), step.begins])),
  jobs,
});

/** Jobs of both weeks of which something moved. */
export const movedJobs = (before: Stood, after: Week): MovedJob[] =>
  after.jobs.flatMap(({ name, finish, late }, i): MovedJob[] => {
    const was = before.jobs.find((job) => job.name === name);
    const steps = after.steps.filter(
      (each) => each.job === i && before.begins.get(stepKey(after.jobs, each)) !== each.begins,
    );
    if (steps.length === 0 || finish === undefined || was?.finish === undefined) return [];
    return [{ name, steps: steps.length, finish: [was.finish, finish], late: [was.late, late] }];
  });

const hours = (seconds: number): string => `${showNumber(seconds / SECONDS_PER_HOUR, 3)} h`;

/** "school-lockers: 12 steps move; done 2026-05-27 10:11 as before"; @param day writes an instant. */
export const movedSays = (
  { name, steps, finish: [was, is], late: [before, after] }: MovedJob,
  day: (at: Instant) => string,
): string => {
  const done = was === is ? `done ${day(is)} as before` : `done ${day(is)}, was ${day(was)}`;
  const late =
    Math.abs(after - before) < 1
      ? ""
      : after === 0
        ? ", in time now"
        : `, late by ${hours(after)}${before > 0 ? `, was ${hours(before)}` : ""}`;
  return `${name}: ${steps} ${steps === 1 ? "step moves" : "steps move"}; ${done}${late}.`;
};
