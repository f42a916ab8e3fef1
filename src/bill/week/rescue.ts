/** What would save a late job: each way is planned, and what it does to all jobs is told. Nothing is believed unplanned. */
import { withOvertime } from "../../calc/schedule/calendar.ts";
import { workBetween } from "../../calc/schedule/finish.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { type Money, money } from "../../units/quantity.ts";
import { noAnswer, Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { calendarOf } from "../nouns/calendar.ts";
import { type BillLine, type Cutter, isLine } from "../nouns/line.ts";
import type { Shop } from "../nouns/shop.ts";
import { MACHINE_STATIONS, type Station } from "../nouns/station.ts";
import { planBill, type QuotedLine } from "../plan.ts";
import { costOf } from "../route/plan-route.ts";
import { measuresOf, unitsOf } from "../time/measures.ts";
import { replanWeek } from "./replan-week.ts";
import { sentKey, type WeekJob } from "./steps.ts";
import type { PlannedStep, Week, WeekOptions } from "./week.ts";

export const RESCUES = ["route", "overtime", "second shift", "further", "outside", "order"] as const;

export interface Rescue {
  readonly kind: (typeof RESCUES)[number];
  /** Of a route the machine that cuts instead; "" for all stations. */
  readonly station: string;
  /** How many lines it is about; 0 where it is about none in particular. */
  readonly lines: number;
  /** Seconds that the job is still late, and that it gains. */
  readonly late: number;
  readonly saves: number;
  /** Seconds late of the other jobs, more (or, below 0, less) than now. */
  readonly others: number;
  /** Hours of people beyond the plan, or undefined where it takes none. */
  readonly hours: number | undefined;
  /** What it costs more; a Refusal names the figure that the tables lack. */
  readonly money: Money | Refusal;
}

const ROUND = 60; // a minute: less is no rescue (chosen)
const FIRST = 10; // how much more a job counts that goes before the others (chosen)

interface Late {
  readonly jobs: readonly WeekJob[];
  readonly options: WeekOptions;
  readonly week: Week;
  readonly at: number;
  readonly shop: Shop;
}

/** Ways that gain something, those that save the job first, then the cheapest, then what gains most. */
export function rescuesOf(jobs: readonly WeekJob[], options: WeekOptions, week: Week, name: string): Rescue[] {
  const at = jobs.findIndex((job) => job.name === name);
  const late: Late = { jobs, options, week, at, shop: options.shop ?? jobs[at]!.plan.shop };
  const chain = new Map<string, PlannedStep[]>();
  for (const i of week.jobs[at]!.chain) {
    const step = week.steps[i]!;
    if (step.work) chain.set(step.station.name, [...(chain.get(step.station.name) ?? []), step]);
  }
  const found = [
    ...(["shear", "waterjet"] as const).flatMap((to) => otherRoute(late, to)),
    ...[...chain.keys(), ""].flatMap((station) => longer(late, station)),
    ...[...chain.keys()].flatMap((station) => further(late, station)),
    ...[...chain].flatMap(([station, steps]) => outside(late, station, steps)),
    ...before(late),
  ];
  const cost = ({ money: found }: Rescue) => (found instanceof Refusal ? Infinity : found);
  const isSaved = ({ late: left, others }: Rescue) => (left <= 0 && others <= 0 ? 0 : left <= 0 ? 1 : 2);
  // What one station does, all of them need not do.
  const isMore = ({ kind, station, late: left }: Rescue) =>
    station === "" && found.some((one) => one.kind === kind && one.station !== "" && one.late <= left);
  return found
    .filter((each) => each.saves >= ROUND && !isMore(each))
    .sort((a, b) => isSaved(a) - isSaved(b) || cost(a) - cost(b) || b.saves - a.saves);
}

type Effect = Pick<Rescue, "late" | "saves" | "others">;

function effectOf({ week, at }: Late, after: Week): Effect {
  const late = after.jobs[at]!.late;
  const others = (of: Week) => of.jobs.reduce((sum, job, i) => sum + (i === at ? 0 : job.late), 0);
  return { late, saves: week.jobs[at]!.late - late, others: others(after) - others(week) };
}

/** Every line of the job that has to be cut yet, and may be cut on the other machine, cut there. */
function otherRoute(late: Late, to: Cutter): Rescue[] {
  const { jobs, options, week, at } = late;
  const { plan } = jobs[at]!;
  const open = new Set(week.steps.filter((step) => step.job === at && isCut(step)).map(({ line }) => line));
  const moved = plan.quoted.filter(
    (line) => open.has(line) && line.cutter !== to && line.plan.cutting[to] !== undefined,
  );
  if (moved.length === 0) return [];
  const rows = new Set(moved.map(({ row }) => row));
  const changed = planBill(
    plan.shop,
    plan.rows.map((row) => (isLine(row) && rows.has(row.row) ? ({ ...row, pin: to } satisfies BillLine) : row)),
  );
  const cost = (of: typeof plan): Money | Refusal =>
    refusalOr(() =>
      money(
        of.quoted
          .filter(({ row }) => rows.has(row))
          .flatMap((line) => of.workOf(line).works)
          .reduce((sum, work) => sum + costOf(work, of.shop), 0),
      ),
    );
  const [before, after] = [cost(plan), cost(changed)];
  const extra = before instanceof Refusal ? before : after instanceof Refusal ? after : money(after - before);
  const again = replanWeek(jobs.with(at, { ...jobs[at]!, plan: changed }), options, week);
  const station = to === "shear" ? "Shear" : "Waterjet";
  return [{ kind: "route", station, lines: moved.length, ...effectOf(late, again), hours: undefined, money: extra }];
}

const isCut = ({ station, work }: PlannedStep): boolean =>
  work !== undefined && /^(?:shear|waterjet)$/i.test(station.name);

/** Overtime and a second shift, at a station or at all of them; what is worked beyond the shifts is paid with its premium. */
function longer(late: Late, station: string): Rescue[] {
  const { jobs, options, week, shop } = late;
  const kinds = [
    ["overtime", shop.rates.find("overtimePerDay")] as const,
    ["second shift", shop.rates.find("secondShift")] as const,
  ];
  return kinds.flatMap(([kind, perDay]): Rescue[] => {
    if (perDay === undefined || perDay <= 0) return [];
    const extra = perDay * SECONDS_PER_HOUR;
    const again = replanWeek(jobs, { ...options, overtime: new Map([[station, extra]]) }, week);
    const worked = again.steps.flatMap((step) => {
      if (!step.work || (station !== "" && step.station.name !== station)) return [];
      const regular = calendarOf(shop.calendar, step.station.name);
      const all = workBetween(step.begins, step.finish, withOvertime(regular, extra));
      return [{ work: step.work, hours: (all - workBetween(step.begins, step.finish, regular)) / SECONDS_PER_HOUR }];
    });
    const hours = worked.reduce((sum, each) => sum + each.hours * each.work.people, 0);
    const paid = refusalOr(() =>
      money(
        worked.reduce((sum, { work, hours: own }) => {
          const second = work.people > 1 ? (work.people - 1) * shop.rates.get("secondPerson") : 0;
          return sum + own * (work.station.rate + second) * shop.rates.get("overtimePremium");
        }, 0),
      ),
    );
    // A second shift is other people at their own hours: nothing is paid on top.
    return [{ kind, station, lines: 0, ...effectOf(late, again), hours, money: kind === "overtime" ? paid : money(0) }];
  });
}

/** A second person at a bench, who works on another line at the same time. */
function further(late: Late, station: string): Rescue[] {
  const { jobs, options, week, shop } = late;
  if (MACHINE_STATIONS.some((name) => name.toLowerCase() === station.toLowerCase())) return [];
  const again = replanWeek(jobs, { ...options, further: new Map([[station, 1]]) }, week);
  const benches = again.machines.filter(({ name }) => name.toLowerCase() === station.toLowerCase());
  const last = benches.at(-1)?.steps ?? [];
  const hours = last.reduce((sum, i) => sum + again.steps[i]!.run + again.steps[i]!.setUp, 0) / SECONDS_PER_HOUR;
  const paid = refusalOr(() => money(hours * shop.rates.get("secondPerson")));
  return [{ kind: "further", station, lines: 0, ...effectOf(late, again), hours, money: paid }];
}

/** The job's own lines that decide there go to the vendor who could do them. */
function outside(late: Late, station: string, chain: readonly PlannedStep[]): Rescue[] {
  const { jobs, options, week, at } = late;
  const { name, plan } = jobs[at]!;
  const steps = chain.filter((step) => step.job === at && !step.isStarted && step.station.vendorDays !== undefined);
  if (steps.length === 0) return [];
  const lines = [...new Set(steps.map(({ line }) => line))];
  const sent = new Set([...(options.sent ?? []), ...lines.map(({ row }) => sentKey(name, row, station))]);
  const again = replanWeek(jobs, { ...options, sent }, week);
  const paid = refusalOr(() => {
    const { minimum = 0 } = steps[0]!.station;
    const price = lines.reduce((sum, line) => sum + priceOf(line, steps[0]!.station), 0);
    const here = lines
      .flatMap((line) => plan.workOf(line).works)
      .filter((work) => work.station.name === station)
      .reduce((sum, work) => sum + costOf(work, plan.shop), 0);
    return money(Math.max(minimum, price) * (1 + (plan.shop.rates.find("outsideMarkUp") ?? 0)) - here);
  });
  return [{ kind: "outside", station, lines: lines.length, ...effectOf(late, again), hours: undefined, money: paid }];
}

/** Throws the Refusal of a price that the stations lack. */
function priceOf({ plan: { line, blank, blanks } }: QuotedLine, station: Station): number {
  const { name, priceEach } = station;
  if (priceEach === undefined) throw noAnswer("stations", `a table with a "Price each" for ${name}`, "none");
  const amount = line.operations.find((each) => each.station.toLowerCase() === name.toLowerCase())?.amount;
  return priceEach * blanks * unitsOf(line, station, measuresOf(line, blank), amount);
}

/** The same work in another order: this job before the others. */
function before(late: Late): Rescue[] {
  const { jobs, options, week, at } = late;
  const { name } = jobs[at]!;
  const weight = options.weights?.get(name) ?? 1;
  const again = replanWeek(
    jobs,
    { ...options, weights: new Map([...(options.weights ?? []), [name, weight * FIRST]]) },
    week,
  );
  return [{ kind: "order", station: "", lines: 0, ...effectOf(late, again), hours: undefined, money: money(0) }];
}
