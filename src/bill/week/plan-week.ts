/** The week of a shop: the open jobs together on one calendar, every step with its machine and its hours. */
import { entryOf } from "../../units/certain.ts";
import { contentId } from "../../units/content.ts";
import type { WeekFault } from "./faults.ts";
import { planSteps } from "./plan-steps.ts";
import { inShifts, rulingShop } from "./ruling-shop.ts";
import { stepsOf, type WeekJob } from "./steps.ts";
import type { Week, WeekOptions } from "./week.ts";

const NOTHING: ReadonlySet<string> = new Set();

const billOf = ({ plan: { rows, shop } }: WeekJob) => `${contentId(rows)} ${contentId(shop.job)}`;

const countOf = ({ marks }: WeekJob): number =>
  [...marks.values()].reduce(
    (sum, { isDone, done, started, pins }) => sum + Number(isDone) + done.length + started.length + pins.length,
    0,
  );

/** Throws a Refusal where nobody's calendar has a shift. */
export function planWeek(open: readonly WeekJob[], options: WeekOptions): Week {
  const faults: WeekFault[] = [];
  const fault = (found: WeekFault) => faults.push(found);
  const shop = options.shop ?? rulingShop(open, fault);
  // Of copies the one that the floor has marked most is the one it works by.
  const ruling = new Map<string, WeekJob>();
  for (const job of open) {
    const other = ruling.get(billOf(job));
    if (!other || countOf(job) > countOf(other)) ruling.set(billOf(job), job);
  }
  const copies = new Set<string>();
  for (const job of open) {
    const { name: than } = entryOf(ruling, billOf(job));
    if (than === job.name) continue;
    fault({ kind: "same bill", job: job.name, than });
    copies.add(job.name);
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
