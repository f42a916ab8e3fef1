/** The week of a shop: the open jobs together on one calendar, every step with its machine and its hours. */
import { contentId } from "../../units/content.ts";
import type { WeekFault } from "./faults.ts";
import { planSteps } from "./plan-steps.ts";
import { inShifts, rulingShop } from "./ruling-shop.ts";
import { stepsOf, type WeekJob } from "./steps.ts";
import type { Week, WeekOptions } from "./week.ts";

const NOTHING: ReadonlySet<string> = new Set();

const billOf = ({ plan: { rows, shop } }: WeekJob) => `${contentId(rows)} ${contentId(shop.job)}`;

/** Throws a Refusal where nobody's calendar has a shift. */
export function planWeek(open: readonly WeekJob[], options: WeekOptions): Week {
  const faults: WeekFault[] = [];
  const fault = (found: WeekFault) => faults.push(found);
  const shop = options.shop ?? rulingShop(open, fault);
  open.forEach((job, i) => {
    const first = open.slice(0, i).find((other) => billOf(other) === billOf(job));
    if (first) fault({ kind: "same bill", job: job.name, than: first.name });
  });
  const given = open.map((job) => inShifts(job, shop));
  const jobs = given.map(({ name, plan: { shop: own }, above }) => {
    const { isRush, start } = own.job;
    return { name, isRush, start, above };
  });
  const steps = stepsOf(given, options.sent ?? NOTHING, fault);
  const week = planSteps({ jobs, steps, shop }, options);
  return { ...week, faults: [...faults, ...week.faults] };
}
