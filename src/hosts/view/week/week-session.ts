/** Open jobs on one board: their week, what a moved bar does to it, and back. The week itself is worked out in src/bill/week. */

import { dayAndTime } from "../../../bill/day.ts";
import { lineName } from "../../../bill/line-name.ts";
import { emptySays, faultSays, type WeekFault, weekWithoutSays } from "../../../bill/week/faults.ts";
import {
  type MovedBar,
  type MovedJob,
  movedJobs,
  movedSays,
  type PinnedStep,
  pinsOf,
  stoodOf,
  withPins,
} from "../../../bill/week/move-bar.ts";
import { stepKey } from "../../../bill/week/open-step.ts";
import { planWeek } from "../../../bill/week/plan-week.ts";
import { keepWeek, searchWeek } from "../../../bill/week/replan-week.ts";
import { rescuesOf } from "../../../bill/week/rescue.ts";
import { effectSays, rescueSays } from "../../../bill/week/rescue-says.ts";
import { rulingShop } from "../../../bill/week/ruling-shop.ts";
import { setForSays } from "../../../bill/week/set-for-says.ts";
import type { WeekJob } from "../../../bill/week/steps.ts";
import type { PlannedStep, Week, WeekOptions } from "../../../bill/week/week.ts";
import { shopOf } from "../../../job/job-plan.ts";
import { weekJob } from "../../../job/week-jobs.ts";
import { bookOf } from "../../../job/workbook-book.ts";
import { chainSays } from "../../../papers/week/week-papers.ts";
import { serialNow, serialOfIso } from "../../../sheet/formula/serial-now.ts";
import { FileRefusal, refusal } from "../../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../../sheet/workbook/read-workbook.ts";
import { itemAt, lastOf, missing } from "../../../units/certain.ts";
import { contentId } from "../../../units/content.ts";
import { showNumber } from "../../../units/show.ts";
import type { Bar, BoardJob, Pinned, WeekBoard, WeekFile } from "./protocol.ts";

const HOUR = 3600; // seconds, by definition
const SECONDS_PER_DAY = 86_400; // by definition
const hours = (seconds: number): string => `${showNumber(seconds / HOUR, 3)} h`;

interface Made {
  readonly jobs: readonly WeekJob[];
  readonly week: Week;
  /** What was pinned last; undefined of the week that was opened. */
  readonly last:
    | { readonly job: string; readonly pins: readonly PinnedStep[]; readonly moved: readonly MovedJob[] }
    | undefined;
}

const openBook = (bytes: Uint8Array) => bookOf(readWorkbook(bytes));

export class WeekSession {
  readonly #options: WeekOptions;
  readonly #faults: string[] = [];
  readonly #lost: WeekFault[] = [];
  /** The week as it was opened, then one a move. */
  #made: Made[];

  /** Throws FileRefusal where no file holds a job, Refusal where nobody's calendar has a shift. */
  constructor(files: readonly WeekFile[], shop: Uint8Array | undefined, now: string | undefined) {
    const ruling = shop && shopOf(openBook(shop));
    const serial = (now === undefined ? undefined : serialOfIso(now)) ?? serialNow(new Date());
    this.#options = { now: Math.round(serial * SECONDS_PER_DAY) as WeekOptions["now"], shop: ruling?.shop };
    const jobs = files.flatMap(({ name, bytes }): WeekJob[] => {
      try {
        if (typeof bytes === "string") throw new FileRefusal("unreadable", bytes);
        const { job, faults } = weekJob(name, openBook(bytes), ruling);
        this.#faults.push(...faults.map((fault) => `${name}: ${fault}`));
        if (typeof job !== "string") return [job];
        this.#lost.push({ kind: "unplanned", job: name, says: job });
      } catch (problem) {
        if (!(problem instanceof FileRefusal)) throw problem;
        this.#lost.push({ kind: "unplanned", job: name, says: problem.message });
      }
      return [];
    });
    if (jobs.length === 0)
      throw refusal(
        "unreadable",
        "the week",
        "a job's workbook",
        [...this.#faults, ...this.#said(this.#lost)].join("; ") || "none",
      );
    this.#made = [{ jobs, week: planWeek(jobs, { ...this.#options, units: 0 }), last: undefined }];
  }

  /** The better of the week shown and the one `shop week` finds with the same pins. */
  search(): WeekBoard {
    const { jobs, week, last } = this.#now;
    const fresh = searchWeek(jobs, this.#options);
    const kept = { ...this.#options, units: 0, tried: [fresh.orders] };
    const best = last ? keepWeek(jobs, kept, week) : planWeek(jobs, { ...kept, tried: [fresh.orders, week.orders] });
    const found = contentId(best.orders) === contentId(fresh.orders) ? fresh : best;
    const before = this.#made.at(-2);
    const moved = before && last && { ...last, moved: movedJobs(stoodOf(before.week), found) };
    this.#made[this.#made.length - 1] = { jobs, week: found, last: moved };
    return this.board();
  }

  move(moved: MovedBar): WeekBoard {
    const { jobs, week } = this.#now;
    const pins = pinsOf(week, moved, this.#options.shop ?? rulingShop(jobs, () => {}));
    const pinned = withPins(jobs, moved.job, pins);
    const again = keepWeek(pinned, this.#options, week);
    this.#made.push({
      jobs: pinned,
      week: again,
      last: { job: moved.job, pins, moved: movedJobs(stoodOf(week), again) },
    });
    return this.board();
  }

  /** The week before the last move. */
  undo(): WeekBoard {
    if (this.#made.length > 1) this.#made.pop();
    return { ...this.board(), moves: [] };
  }

  rescues(name: string): string[] {
    const { jobs, week } = this.#now;
    return rescuesOf(jobs, this.#options, week, name).map((each) => `${rescueSays(each)}: ${effectSays(each)}`);
  }

  board(): WeekBoard {
    const { week, last } = this.#now;
    const before = this.#made.at(-2)?.week;
    const { worth, isProved } = week;
    const faults = [...this.#lost, ...week.faults];
    const late = week.jobs.filter((job) => job.late > 0);
    return {
      now: week.now,
      jobs: week.jobs.map((_, job) => this.#job(week, job, before)),
      days: week.days,
      figures: [
        [
          "Late",
          [`${late.length} of ${week.jobs.length} jobs`, weekWithoutSays({ ...week, faults })]
            .filter(Boolean)
            .join(", "),
        ],
        ["Hours late", hours(late.reduce((sum, job) => sum + job.late, 0))],
        ["Plan", isProved ? "proved best" : "best found"],
        ["Set-up", hours(worth.setUp)],
      ],
      pins: this.#made.toReversed().flatMap((made) => pinsSaid(made.last)),
      missed: this.#said(week.faults.filter((fault) => last && isMissed(fault, last))),
      moves: last ? [...closedSays(last.pins), ...movesSay(last.moved)] : [],
      faults: [...this.#faults, ...this.#said(faults)],
    };
  }

  #said(faults: readonly WeekFault[]): string[] {
    return faults.map((fault) => faultSays(fault, dayAndTime));
  }

  get #now(): Made {
    return lastOf(this.#made);
  }

  #job(week: Week, job: number, before: Week | undefined): BoardJob {
    const { name, isRush, due, finish, late, chain } = itemAt(week.jobs, job);
    const deliveries = week.deliveries.filter((each) => each.job === job);
    const done = finish === undefined ? emptySays(week, name) : `done ${dayAndTime(finish)}`;
    return {
      name,
      isRush,
      late,
      deliveries: deliveries.map(({ due: by, finish: at, late: over }) => ({ due: by, finish: at, late: over })),
      says: due === undefined ? done : `must leave ${dayAndTime(due)}, ${done}`,
      verdict: [
        late > 0 ? `late by ${hours(late)}` : finish === undefined ? done : due === undefined ? "no date" : "in time",
        weekWithoutSays(week, name),
      ]
        .filter((words) => words !== "")
        .join(", "),
      decides:
        late > 0
          ? chainSays(
              chain.map((i) => itemAt(week.steps, i)),
              week,
            )
          : "",
      bars: this.#bars(week, job, before),
    };
  }

  #bars(week: Week, job: number, before: Week | undefined): Bar[] {
    const stood = new Map((before?.steps ?? []).map((step) => [stepKey((before ?? missing()).jobs, step), step]));
    const bars = new Map<string, PlannedStep[]>();
    for (const step of week.steps) {
      if (step.job !== job) continue;
      const key = `${step.line.row} ${step.station.name}`;
      bars.set(key, [...(bars.get(key) ?? []), step]);
    }
    const { system } = itemAt(this.#now.jobs, job).plan.shop;
    return [...bars.values()].map((lots) => {
      const [step] = lots as [PlannedStep];
      const { line, station, machine, work, isStarted, pin } = step;
      const span = spanOf(lots);
      const old = lots.flatMap((lot) => stood.get(stepKey(week.jobs, lot)) ?? []);
      const was = old.length > 0 ? spanOf(old) : undefined;
      const pieces = lots.reduce((sum, lot) => sum + lot.pieces, 0);
      const setFor = setForSays(step, system);
      return {
        row: line.row,
        part: lineName(line),
        station: station.name,
        machine,
        begins: span[0],
        finish: span[1],
        says: `${showNumber(pieces, 7)} pieces on ${machine}${setFor === "" ? "" : `, set up for ${setFor}`}`,
        isStarted,
        isAway: work === undefined,
        pin,
        was: was && (was[0] !== span[0] || was[1] !== span[1]) ? was : undefined,
      };
    });
  }
}

const spanOf = (steps: readonly Pick<PlannedStep, "begins" | "finish">[]) =>
  [
    Math.min(...steps.map(({ begins }) => begins)) as PlannedStep["begins"],
    Math.max(...steps.map(({ finish }) => finish)) as PlannedStep["finish"],
  ] as const;

const isMissed = (fault: WeekFault, { job, pins }: NonNullable<Made["last"]>): boolean =>
  (fault.kind === "pin missed" || fault.kind === "pin early" || fault.kind === "pin passed") &&
  fault.job === job &&
  pins.some((pin) => lineName(pin) === fault.line && pin.station === fault.mark);

const pinsSaid = (last: Made["last"]): Pinned[] =>
  (last?.pins ?? []).map(({ row, part, station, at }) => ({
    job: (last ?? missing()).job,
    line: lineName({ part, row }),
    mark: `${station} ${dayAndTime(at)}`,
  }));

function closedSays(pins: readonly PinnedStep[]): string[] {
  const closed = pins.filter(({ isClosed }) => isClosed).length;
  if (closed === 0) return [];
  return [
    `${closed} of ${pins.length} ${pins.length === 1 ? "pin" : "pins"} fell outside the shifts: moved to the next working time.`,
  ];
}

const movesSay = (moved: readonly MovedJob[]): string[] =>
  moved.length === 0 ? ["Nothing else moves."] : moved.map((each) => movedSays(each, dayAndTime));
