/** The week as `week --json` writes it, for other programs and for the next week. Nothing is decided here. */

import { z } from "zod";
import { lineName } from "../bill/line-name.ts";
import type { Instant } from "../bill/pictures.ts";
import { faultSays, linesWithout } from "../bill/week/faults.ts";
import { type MovedJob, movedSays, type Stood } from "../bill/week/move-bar.ts";
import { stepKey } from "../bill/week/open-step.ts";
import type { Rescue } from "../bill/week/rescue.ts";
import { effectSays, rescueSays } from "../bill/week/rescue-says.ts";
import { setForSays } from "../bill/week/set-for-says.ts";
import type { WeekJob } from "../bill/week/steps.ts";
import type { Taken } from "../bill/week/take-bill.ts";
import type { Week } from "../bill/week/week.ts";
import { serialOfIso } from "../sheet/formula/serial-now.ts";
import { itemAt } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { isoTime, orNull, plain, textOrNull } from "./plain-figures.ts";

const HOUR = 3600; // seconds, by definition
const MINUTE = 60; // seconds, by definition
const DAY = 86_400; // seconds, by definition

const time = z.string();
const STEP = z.strictObject({
  key: z.string(),
  job: z.string(),
  line: z.number(),
  part: z.string(),
  station: z.string(),
  machine: z.string(),
  lot: z.number(),
  lots: z.number(),
  pieces: z.number(),
  set_for: z.string().nullable(),
  begins: time,
  run_from: time,
  finish: time,
  set_up_minutes: z.number(),
  run_minutes: z.number().nullable(),
  latest: time.nullable(),
  slack_hours: z.number().nullable(),
  critical: z.boolean(),
  started: z.boolean(),
});
const RESCUE = z.strictObject({
  job: z.string(),
  kind: z.string(),
  station: z.string().nullable(),
  lines: z.number(),
  late_hours: z.number(),
  saves_hours: z.number(),
  others_hours: z.number(),
  people_hours: z.number().nullable(),
  money: z.number().nullable(),
  says: z.string(),
});
export const WEEK_JSON = z.strictObject({
  version: z.literal(1),
  now: time,
  jobs: z.array(
    z.strictObject({
      job: z.string(),
      due: time.nullable(),
      finish: time.nullable(),
      late_hours: z.number(),
      /** null: nothing of it could be planned. */
      without_lines: z.number().nullable(),
      latest_start: time.nullable(),
      planned_latest_start: time.nullable().optional(),
      chain: z.array(z.string()),
    }),
  ),
  steps: z.array(STEP),
  orders: z.record(z.string(), z.array(z.string())),
  days: z.array(
    z.strictObject({
      machine: z.string(),
      station: z.string(),
      day: time,
      available_hours: z.number(),
      load_hours: z.number(),
      slack_hours: z.number(),
      people_hours: z.number(),
    }),
  ),
  weighted_late_hours: z.number(),
  set_up_hours: z.number(),
  bound: z.strictObject({ weighted_late_hours: z.number(), set_up_hours: z.number() }),
  proved: z.boolean(),
  rescues: z.array(RESCUE),
  take: z
    .strictObject({
      job: z.string(),
      earliest: time.nullable(),
      wanted: time.nullable(),
      without_lines: z.number().nullable(),
      kept: z.array(z.strictObject({ job: z.string(), leaves: time })),
      earlier: z.array(RESCUE),
    })
    .nullable(),
  /** Against the plan before; null: none was given. */
  moved: z
    .array(
      z.strictObject({
        job: z.string(),
        steps: z.number(),
        was: z.strictObject({ finish: time, late_hours: z.number() }),
        says: z.string(),
      }),
    )
    .nullable(),
  faults: z.array(z.string()),
});
export type WeekJson = z.infer<typeof WEEK_JSON>;

export interface SaidWeek {
  readonly jobs: readonly WeekJob[];
  readonly week: Week;
  /** By job. */
  readonly rescues: readonly (readonly [job: string, found: readonly Rescue[]])[];
  /** Against the plan before, where one was given. */
  readonly moved: readonly MovedJob[] | undefined;
  readonly taken: (Taken & { readonly name: string }) | undefined;
  /** By job, where each was planned again with a later start. */
  readonly latest?: readonly (Instant | undefined)[];
  /** Of files, a sentence each. */
  readonly faults: readonly string[];
}

export const weekJson = ({ jobs, week, rescues, moved, taken, latest, faults }: SaidWeek): WeekJson => {
  const key = (i: number) => stepKey(jobs, itemAt(week.steps, i));
  return WEEK_JSON.parse({
    version: 1,
    now: isoTime(week.now),
    jobs: week.jobs.map(({ name, due, finish, late, latestStart, chain }, i) => ({
      job: name,
      due: orNull(due && isoTime(due)),
      finish: orNull(finish && isoTime(finish)),
      late_hours: plain(late / HOUR),
      without_lines: withoutOf(week, name),
      latest_start: orNull(latestStart && isoTime(latestStart)),
      ...(latest ? { planned_latest_start: orNull(latest[i] && isoTime(latest[i])) } : {}),
      chain: chain.map(key),
    })),
    steps: week.steps.map((step, i) => ({
      key: key(i),
      job: itemAt(week.jobs, step.job).name,
      line: step.line.row - 1,
      part: lineName(step.line),
      station: step.station.name,
      machine: step.machine,
      lot: step.lot,
      lots: step.lots,
      pieces: step.pieces,
      set_for: textOrNull(setForSays(step, itemAt(jobs, step.job).plan.shop.system)),
      begins: isoTime(step.begins),
      run_from: isoTime(step.ready),
      finish: isoTime(step.finish),
      set_up_minutes: plain(step.setUp / MINUTE),
      run_minutes: step.work ? plain(step.run / MINUTE) : null,
      latest: orNull(step.latest && isoTime(step.latest)),
      slack_hours: step.slack === undefined ? null : plain(step.slack / HOUR),
      critical: step.isCritical,
      started: step.isStarted,
    })),
    orders: Object.fromEntries(week.orders),
    days: week.days.map(({ machine, station, day, available, load, people }) => ({
      machine,
      station,
      day: isoTime(day),
      available_hours: plain(available / HOUR),
      load_hours: plain(load / HOUR),
      slack_hours: plain((available - load) / HOUR),
      people_hours: plain(people / HOUR),
    })),
    weighted_late_hours: plain(week.worth.late / HOUR),
    set_up_hours: plain(week.worth.setUp / HOUR),
    bound: { weighted_late_hours: plain(week.bound.late / HOUR), set_up_hours: plain(week.bound.setUp / HOUR) },
    proved: week.isProved,
    rescues: rescues.flatMap(([job, found]) => found.map((rescue) => rescueJson(job, rescue))),
    take: taken
      ? {
          job: taken.name,
          earliest: orNull(taken.earliest && isoTime(taken.earliest)),
          wanted: orNull(taken.wanted && isoTime(taken.wanted)),
          without_lines: withoutOf(week, itemAt(week.jobs, week.jobs.length - 1).name),
          kept: taken.kept.map(({ job, leaves }) => ({ job, leaves: isoTime(leaves) })),
          earlier: taken.earlier.map((rescue) => rescueJson(taken.name, rescue)),
        }
      : null,
    moved: moved
      ? moved.map((each) => ({
          job: each.name,
          steps: each.steps,
          was: { finish: isoTime(each.finish[0]), late_hours: plain(each.late[0] / HOUR) },
          says: movedSays(each, isoTime),
        }))
      : null,
    faults: [...faults, ...week.faults.map((fault) => faultSays(fault, isoTime))],
  });
};

function withoutOf({ faults }: Week, name: string): number | null {
  const lines = linesWithout(faults, name);
  return lines === Infinity ? null : lines;
}

const rescueJson = (job: string, rescue: Rescue) => ({
  job,
  kind: rescue.kind,
  station: rescue.station === "" ? null : rescue.station,
  lines: rescue.lines,
  late_hours: plain(rescue.late / HOUR),
  saves_hours: plain(rescue.saves / HOUR),
  others_hours: plain(rescue.others / HOUR),
  people_hours: rescue.hours === undefined ? null : plain(rescue.hours),
  money: rescue.money instanceof Refusal ? null : plain(rescue.money),
  says: `${rescueSays(rescue)}: ${effectSays(rescue)}`,
});

/** The orders of a week that was written before, and what of it begins before a time. undefined: no such file. */
export function weekBefore(text: string): WeekJson | undefined {
  try {
    return WEEK_JSON.parse(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** What that week says of its steps and jobs, to be compared with the next. */
export const stoodIn = ({ steps, jobs }: WeekJson): Stood => ({
  begins: new Map(steps.map(({ key, begins }) => [key, instantOf(begins)])),
  jobs: jobs.map(({ job, finish, late_hours }) => ({
    name: job,
    finish: finish === null ? undefined : instantOf(finish),
    late: late_hours * HOUR,
  })),
});
const instantOf = (text: string) => Math.round((serialOfIso(text) ?? Infinity) * DAY) as Instant;
