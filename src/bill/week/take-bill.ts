import type { Instant } from "../../calc/schedule/calendar.ts";
import { lastOf } from "../../units/certain.ts";
import { planWeek } from "./plan-week.ts";
import { type Rescue, rescuesOf } from "./rescue.ts";
import type { WeekJob } from "./steps.ts";
import type { Week, WeekOptions } from "./week.ts";

export interface Taken {
  /** When it is done while no other job leaves later than it would without it, or than it is due. */
  readonly earliest: Instant | undefined;
  /** When it must leave; undefined where nobody said. */
  readonly wanted: Instant | undefined;
  /** What it would cost to be earlier: other jobs' hours, overtime, sending out. */
  readonly earlier: readonly Rescue[];
  /** All jobs and it, the others unharmed, against the dates they have. */
  readonly week: Week;
  /** Jobs that are late already: when they leave without it, which is what is kept. */
  readonly kept: readonly { readonly job: string; readonly leaves: Instant }[];
}

/** A second of the others is worth more than all that the new job could gain (chosen). */
const UNHARMED = 1e7;

/**
 * Can we take this bill? The others are planned first without it. Then it goes in between, begun behind all of them, which
 * harms nobody, and bettered only where that still harms nobody.
 */
export function takeBill(open: readonly WeekJob[], bill: WeekJob, options: WeekOptions): Taken {
  const jobs = [...open, bill];
  const alone = planWeek(open, options);
  const leaves = new Map(
    open.map(({ name }, job) => {
      const own = alone.deliveries.filter((delivery) => delivery.job === job);
      const at = (due: Instant | undefined) => own.find((delivery) => delivery.due === due)?.finish;
      const later = (due: Instant | undefined) =>
        due === undefined ? at(due) : (Math.max(due, at(due) ?? due) as Instant);
      return [name, later] as const;
    }),
  );
  const others = { ...options, tried: [alone.orders] };
  const weights = new Map(open.map(({ name }) => [name, UNHARMED]));
  const soonest = { ...others, weights, dues: new Map([...leaves, [bill.name, () => options.now] as const]) };
  const found = planWeek(jobs, soonest);
  // If the search has harmed somebody after all, the plan it began with has not.
  const isHarmed = found.jobs.some(({ late, name }) => name !== bill.name && late > 0);
  const week = isHarmed ? planWeek(jobs, { ...soonest, units: 0 }) : found;
  const earliest = lastOf(week.jobs).finish;
  const asked = { ...others, dues: leaves };
  const own = planWeek(jobs, { ...asked, weights, units: 0, tried: [week.orders] });
  const wanted = lastOf(own.jobs).due;
  const kept = alone.jobs.flatMap(({ name, late, finish }) =>
    late > 0 && finish !== undefined ? [{ job: name, leaves: finish }] : [],
  );
  return {
    kept,
    earliest,
    wanted,
    earlier: lastOf(own.jobs).late > 0 ? rescuesOf(jobs, asked, own, bill.name) : [],
    week: planWeek(jobs, { ...options, units: 0, tried: [own.orders] }),
  };
}
