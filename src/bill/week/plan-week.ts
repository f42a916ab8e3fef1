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
  const firsts = new Map<string, string>();
  const copies = new Set<string>();
  for (const job of open) {
    const than = firsts.get(billOf(job));
    firsts.set(billOf(job), than ?? job.name);
    if (than !== undefined) fault({ kind: "same bill", job: job.name, than });
    if (than !== undefined) copies.add(job.name);
  }
  const given = open.map((job) => inShifts(job, shop));
  const jobs = given.map(({ name, plan: { shop: own }, above }) => {
    const { isRush, start } = own.job;
    return { name, isRush, start, above };
  });
  const isCopy = ({ name }: WeekJob) => copies.has(name);
  const steps = stepsOf(given, { sent: options.sent ?? NOTHING, isCopy, fault });
  const week = planSteps({ jobs, steps, shop }, options);
  return { ...week, faults: [...faults, ...week.faults] };
}
