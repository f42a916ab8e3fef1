/** How long a job may wait: it is held back and the week planned again. What is answered has a plan that keeps all dates as they are. */

import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { itemAt } from "../../units/certain.ts";
import { replanWeek } from "./replan-week.ts";
import type { WeekJob } from "./steps.ts";
import type { Week, WeekOptions } from "./week.ts";

const UNITS = 2e5; // chosen: each job takes some ten plans
const STEP = 900; // a quarter of an hour (chosen)
const MINUTE = 60; // seconds, by definition; less is not later

/** By job the latest start, to a quarter of an hour, at which no job was found to be later than in the week; undefined without a date or where it has begun. */
export function latestStarts(
  jobs: readonly WeekJob[],
  options: WeekOptions,
  week: Week,
): readonly (Instant | undefined)[] {
  const late = week.jobs.map((job) => job.late + MINUTE);
  return week.jobs.map(({ name, due }, at) => {
    const own = week.steps.filter(({ job }) => job === at);
    if (due === undefined || own.length === 0 || own.some(({ isStarted }) => isStarted)) return undefined;
    const harmsNobody = (from: number): boolean => {
      const starts = new Map([[name, instant(from)]]);
      return replanWeek(jobs, { ...options, units: UNITS, starts }, week).jobs.every(
        (job, i) => job.late < itemAt(late, i),
      );
    };
    let [low, high] = [options.now as number, Math.max(due, options.now + STEP)];
    while (high - low > STEP) {
      const middle = low + Math.round((high - low) / 2 / STEP) * STEP;
      if (harmsNobody(middle)) low = middle;
      else high = middle;
    }
    return instant(low);
  });
}
