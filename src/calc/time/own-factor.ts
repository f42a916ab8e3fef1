/** What finished jobs say about the estimate: the shop's own factor on the minutes of a station. */
import { firstOf } from "../../units/certain.ts";
import type { Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { furthestOut, type Measured, shrunkMean } from "../shrunk-mean.ts";
import type { Seconds } from "./seconds.ts";

/** One line of a finished job at one station. */
export interface FinishedWork {
  readonly station: string;
  readonly part: string;
  /** As it was estimated, without a factor of the shop's own. */
  readonly estimated: Seconds;
  readonly recorded: Seconds;
  /** In the table, from 1, where it is not the work's own in the list. */
  readonly place?: number;
}

export interface OwnFactor {
  readonly station: string;
  /** Jobs that it is made from. */
  readonly jobs: number;
  /** On every estimated minute; 1 until there are jobs enough. */
  readonly factor: Ratio;
  /** One standard deviation to either side, of the factor itself. */
  readonly low: Ratio;
  readonly high: Ratio;
  /** By how much one job differs from another: the standard deviation of recorded over estimated; undefined below two. */
  readonly spread: Ratio | undefined;
  /** Left out, by their place in the table. */
  readonly outliers: readonly { readonly place: number; readonly part: string; readonly ratio: Ratio }[];
  readonly isFew: boolean;
}

/** Fewer say nothing that chance could not. */
export const LEAST_JOBS = 3;
/** Before anything is recorded: shops differ from the estimate by about a fifth, one job from the next by a third (chosen). */
const PRIOR: Measured = { value: 0, deviation: 0.2 };
const JOB_DEVIATION = 0.35; // chosen, see above

type Job = Measured & { readonly place: number; readonly work: FinishedWork };

/**
 * The factor of every station: the mean of ln(recorded / estimated), shrunk towards 0 by the prior N(0, 0.2^2), each job
 * with a deviation of 0.35; exp of it. Three jobs at least; a job three deviations from the others is left out and named.
 * It lies between 1 and what was recorded, never past it. Source: conjugate normal prior (shrunk-mean.ts), on logarithms
 * because half and double are equally far from an estimate (derived).
 * @param finished estimated and recorded both above 0.
 */
export function ownFactors(finished: readonly FinishedWork[], work?: Working): OwnFactor[] {
  const byStation = new Map<string, Job[]>();
  finished.forEach((each, i) => {
    const key = each.station.toLowerCase();
    const job = {
      value: Math.log(each.recorded / each.estimated),
      deviation: JOB_DEVIATION,
      place: each.place ?? i + 1,
      work: each,
    };
    byStation.set(key, [...(byStation.get(key) ?? []), job]);
  });
  return [...byStation].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, jobs]) => factorOf(jobs, work));
}

function factorOf(jobs: readonly Job[], work: Working | undefined): OwnFactor {
  // In an order of their own: the order of the table changes no digit.
  const used = [...jobs].sort((a, b) => a.value - b.value);
  const outliers: { place: number; part: string; ratio: Ratio }[] = [];
  for (let out = furthestOut(used, PRIOR); out && used.length > LEAST_JOBS; out = furthestOut(used, PRIOR)) {
    const { place, work: left, value } = out.measured;
    used.splice(used.indexOf(out.measured), 1);
    outliers.push({ place, part: left.part, ratio: Math.exp(value) });
  }
  const { station } = firstOf(jobs).work;
  const isFew = used.length < LEAST_JOBS;
  const { value, deviation } = isFew ? { value: 0, deviation: PRIOR.deviation } : shrunkMean(used, PRIOR);
  const factor = step(
    work,
    "f",
    isFew
      ? `${station}: fewer than ${LEAST_JOBS} jobs, no factor yet`
      : `${station}: own factor of ${used.length} jobs`,
    Math.exp(value),
    "",
    "exp of the mean of ln(recorded / estimated), prior N(0, 0.2^2), a job 0.35 (derived)",
  );
  return {
    station,
    jobs: used.length,
    factor,
    low: Math.exp(value - deviation),
    high: Math.exp(value + deviation),
    spread: used.length < 2 ? undefined : spreadOf(used.map((job) => Math.exp(job.value))),
    outliers,
    isFew,
  };
}

/** Sample standard deviation. */
function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
