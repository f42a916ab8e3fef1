import { stepKey } from "./open-step.ts";
import { planWeek } from "./plan-week.ts";
import type { WeekJob } from "./steps.ts";
import type { Week, WeekOptions } from "./week.ts";

/** A small part of the usual work (chosen): an edited mark is answered while somebody looks. */
const UNITS = 1e6;

/** The week after a small change: begun from the orders of the week before, and never worse than they. */
export const replanWeek = (jobs: readonly WeekJob[], options: WeekOptions, before: Pick<Week, "orders">): Week =>
  planWeek(jobs, { units: UNITS, ...options, tried: [before.orders, ...(options.tried ?? [])] });

/** The same, moved as little as costs no late hours and no set-up: in the order and at the times of the earlier week. */
export const keepWeek = (jobs: readonly WeekJob[], options: WeekOptions, before: Week): Week => {
  const stood = new Map(before.steps.map((step) => [stepKey(before.jobs, step), step.ready]));
  return replanWeek(jobs, { ...options, isKept: true, stood }, before);
};

/** The week as it is answered: what would save a job is held against a plan that was searched for as long as each way is. */
export function searchWeek(jobs: readonly WeekJob[], options: WeekOptions): Week {
  const first = planWeek(jobs, options);
  return first.jobs.some(({ late }) => late > 0) ? replanWeek(jobs, options, first) : first;
}
