/** What would save a late job: each way is planned, and what it does to all jobs is told. Nothing is believed unplanned. */
import { laborCost } from "../../calc/cost/labor-cost.ts";
import { dayOf, type Instant, instant, SECONDS_PER_DAY, withOvertime } from "../../calc/schedule/calendar.ts";
import { workBetween } from "../../calc/schedule/finish.ts";
import { SECONDS_PER_HOUR, seconds } from "../../calc/time/seconds.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { type Money, money } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { lineName } from "../line-name.ts";
import { calendarOf } from "../nouns/calendar.ts";
import { type BillLine, type Cutter, isLine } from "../nouns/line.ts";
import type { Shop } from "../nouns/shop.ts";
import { MACHINE_STATIONS, priceEachOf, type Station } from "../nouns/station.ts";
import { planBill, type QuotedLine } from "../plan.ts";
import { costOf } from "../route/plan-route.ts";
import { measuresOf, unitsOf } from "../time/measures.ts";
import { type StationWork, timeOf } from "../time/station-work.ts";
import { isCounted } from "./crew.ts";
import { planWeek } from "./plan-week.ts";
import { replanWeek } from "./replan-week.ts";
import { inShifts, rulingShop } from "./ruling-shop.ts";
import { sentKey, type WeekJob } from "./steps.ts";
import type { PlannedStep, Week, WeekOptions } from "./week.ts";

const RESCUES = ["route", "overtime", "second shift", "further", "outside", "order"] as const;

export interface Rescue {
  readonly kind: (typeof RESCUES)[number];
  /** Of a route the machine that cuts instead; "" for all stations. */
  readonly station: string;
  /** How many lines it is about, and their names; 0 where it is about none in particular. */
  readonly lines: number;
  readonly parts: readonly string[];
  /** Of overtime or a second shift the hours added to a day, and on how many days they are worked; else 0. */
  readonly perDay: number;
  readonly days: number;
  /** Of another order the job that gives way; "" where all do. */
  readonly before: string;
  /** Seconds that the job is still late, and that it gains. */
  readonly late: number;
  readonly saves: number;
  /** Seconds late of the other jobs, more (or, below 0, less) than now, and whose they are that are more. */
  readonly others: number;
  readonly harmed: readonly { readonly job: string; readonly late: number }[];
  /** Hours of people beyond the plan (below 0: fewer); undefined where they cannot be told. */
  readonly hours: number | undefined;
  /** Their hours as the tables pay them, and what is bought; a Refusal names the figure that the tables lack. */
  readonly money: Money | Refusal;
}

const ROUND = 60; // a minute: less is no rescue (chosen)
const MOST_IN_WAY = 3; // chosen: each one is another plan
const UNHARMED = 1e7; // a second of the others is worth more than all that the job could gain (chosen)
const FEW = 10; // a tenth of what it is late is a little (chosen)
const FIRST = 10; // how much more a job counts that goes before the others (chosen)

interface Late {
  readonly jobs: readonly WeekJob[];
  readonly options: WeekOptions;
  readonly week: Week;
  readonly at: number;
  readonly shop: Shop;
}

/** Ways that gain something, those that save the job first, then the cheapest, then what takes least of people. */
export function rescuesOf(open: readonly WeekJob[], options: WeekOptions, week: Week, name: string): Rescue[] {
  const at = open.findIndex((job) => job.name === name);
  const shop = options.shop ?? rulingShop(open, () => {});
  // A workbook without shifts could price no hour of its own.
  const jobs = open.map((job) => inShifts(job, shop));
  const late: Late = { jobs, options, week, at, shop };
  const chain = new Map<string, PlannedStep[]>();
  for (const i of itemAt(week.jobs, at).chain) {
    const step = itemAt(week.steps, i);
    if (step.work) chain.set(step.station.name, [...(chain.get(step.station.name) ?? []), step]);
  }
  const found = [
    ...(["shear", "waterjet"] as const).flatMap((to) => otherRoute(late, to)),
    ...[...chain.keys(), ""].flatMap((station) => longer(late, station)),
    ...[...chain.keys(), ""].flatMap((station) => further(late, station)),
    ...[...chain].flatMap(([station, steps]) => outside(late, station, steps)),
    ...before(late),
  ];
  const cost = ({ money: found }: Rescue) => (found instanceof Refusal ? Infinity : found);
  const isSaved = ({ late: left, others }: Rescue) => (left <= 0 && others <= 0 ? 0 : left <= 0 ? 1 : 2);
  // Where one station is enough, all of them need not.
  const isMore = ({ kind, station, late: left }: Rescue) =>
    station === "" && found.some((one) => one.kind === kind && one.station !== "" && one.late <= left);
  // Where one way saves the job, one that gains only a little is not a rescue.
  const least = found.some(({ late: left }) => left <= 0) ? itemAt(week.jobs, at).late / FEW : ROUND;
  return found
    .filter((each) => each.saves >= Math.max(ROUND, least) && !isMore(each))
    .sort(
      (a, b) => isSaved(a) - isSaved(b) || cost(a) - cost(b) || (a.hours ?? 0) - (b.hours ?? 0) || b.saves - a.saves,
    );
}

type Effect = Pick<Rescue, "late" | "saves" | "others" | "harmed">;

function effectOf({ week, at }: Late, after: Week): Effect {
  const late = itemAt(after.jobs, at).late;
  const more = after.jobs.map((job, i) => ({
    job: job.name,
    late: i === at ? 0 : job.late - itemAt(week.jobs, i).late,
  }));
  const others = more.reduce((sum, each) => sum + each.late, 0);
  return { late, saves: itemAt(week.jobs, at).late - late, others, harmed: more.filter((each) => each.late >= ROUND) };
}

/** The measure must save the job, not the order it was planned in: in that order without it, more is late. */
function isTied({ jobs, options }: Late, after: Week): boolean {
  const plain = planWeek(jobs, { ...options, units: 0, tried: [after.orders] });
  const late = (of: Week) => of.jobs.reduce((sum, job) => sum + job.late, 0);
  return late(plain) - late(after) >= ROUND;
}

const NONE = { lines: 0, parts: [], perDay: 0, days: 0, before: "" } as const;
const linesOf = (lines: readonly QuotedLine[]) => ({ lines: lines.length, parts: lines.map(lineName) });

/** Lines of the job that have to be cut yet and may be cut on the other machine: those that decide, or where that is less, all. */
function otherRoute(late: Late, to: Cutter): Rescue[] {
  const { week, at } = late;
  const { quoted } = itemAt(late.jobs, at).plan;
  const movable = (steps: readonly PlannedStep[]) => {
    const open = new Set(steps.filter((step) => step.job === at && isCut(step)).map(({ line }) => line));
    return quoted.filter((line) => open.has(line) && line.cutter !== to && line.plan.cutting[to] !== undefined);
  };
  const few = movable(itemAt(week.jobs, at).chain.map((i) => itemAt(week.steps, i)));
  const all = movable(week.steps);
  const ways = [few, ...(all.length > few.length ? [all] : [])].flatMap((lines) => cutOn(late, to, lines));
  return ways.sort((a, b) => a.late - b.late || a.lines - b.lines).slice(0, 1);
}

function cutOn(late: Late, to: Cutter, moved: readonly QuotedLine[]): Rescue[] {
  const { jobs, options, week, at } = late;
  const { plan } = itemAt(jobs, at);
  if (moved.length === 0) return [];
  const rows = new Set(moved.map(({ row }) => row));
  const changed = planBill(
    plan.shop,
    plan.rows.map((row) => (isLine(row) && rows.has(row.row) ? ({ ...row, pin: to } satisfies BillLine) : row)),
  );
  const worksOf = (of: typeof plan) =>
    of.quoted.filter(({ row }) => rows.has(row)).flatMap((line) => of.workOf(line).works);
  const extra = refusalOr(() => {
    const [was, is] = [worksOf(plan), worksOf(changed)];
    const cost = (works: typeof was) => works.reduce((sum, work) => sum + costOf(work, plan.shop), 0);
    return { hours: peopleHours(is) - peopleHours(was), money: money(cost(is) - cost(was)) };
  });
  const again = replanWeek(jobs.with(at, { ...itemAt(jobs, at), plan: changed }), options, week);
  if (!isTied(late, again)) return [];
  const station = to === "shear" ? "Shear" : "Waterjet";
  return [{ ...NONE, kind: "route", station, ...linesOf(moved), ...effectOf(late, again), ...costsOf(extra) }];
}

const peopleHours = (works: readonly StationWork[]): number =>
  works.reduce((sum, work) => sum + (timeOf(work) * work.people) / SECONDS_PER_HOUR, 0);
const costsOf = (found: Pick<Rescue, "hours" | "money"> | Refusal): Pick<Rescue, "hours" | "money"> =>
  found instanceof Refusal ? { hours: undefined, money: found } : found;

const isCut = ({ station, work }: PlannedStep): boolean =>
  work !== undefined && /^(?:shear|waterjet)$/i.test(station.name);

/** Overtime, as little of it as saves the job, and a second shift, at a station or at all of them. */
function longer(late: Late, station: string): Rescue[] {
  const { rates } = late.shop;
  const most = rates.find("overtimePerDay") ?? 0;
  const shift = rates.find("secondShift") ?? 0;
  const all = most > 0 ? addedHours(late, station, "overtime", most) : undefined;
  let enough: Rescue | undefined;
  for (let quarters = 1; quarters < 4 && !enough && all && all.late <= 0; quarters++) {
    const found = addedHours(late, station, "overtime", (most * quarters) / 4);
    if (found && found.late <= 0 && found.others <= all.others) enough = found;
  }
  const second = shift > 0 ? addedHours(late, station, "second shift", shift) : undefined;
  return [enough ?? all, second].filter((found) => found !== undefined);
}

/** People are paid for the hours they work beyond the shifts, as the plan pays the same work; overtime has its premium on top. */
function addedHours(late: Late, station: string, kind: "overtime" | "second shift", perDay: number) {
  const { jobs, options, week, shop } = late;
  const extra = perDay * SECONDS_PER_HOUR;
  const again = replanWeek(jobs, { ...options, overtime: new Map([[station, extra]]) }, week);
  if (!isTied(late, again)) return undefined;
  const days = new Set<number>();
  const worked = again.steps.flatMap((step) => {
    if (!step.work || (station !== "" && step.station.name !== station)) return [];
    const regular = calendarOf(shop.calendar, step.station.name);
    const added = (from: Instant, to: Instant) =>
      workBetween(from, to, withOvertime(regular, extra)) - workBetween(from, to, regular);
    for (let day = dayOf(step.begins); day <= dayOf(step.finish); day++) {
      const [from, to] = [day, day + 1].map((each) => each * SECONDS_PER_DAY) as [number, number];
      if (added(instant(Math.max(from, step.begins)), instant(Math.min(to, step.finish))) > 0) days.add(day);
    }
    return [{ work: step.work, hours: added(step.begins, step.finish) / SECONDS_PER_HOUR }];
  });
  const hours = worked.reduce((sum, each) => sum + each.hours * each.work.people, 0);
  const paid = refusalOr(() =>
    money(
      worked.reduce((sum, { work, hours: own }) => {
        const second = money(work.people > 1 ? shop.rates.get("secondPerson") : 0);
        return sum + laborCost(seconds(own * SECONDS_PER_HOUR), work.station.rate, work.people, second);
      }, 0) * (kind === "overtime" ? 1 + shop.rates.get("overtimePremium") : 1),
    ),
  );
  return { ...NONE, kind, station, perDay, days: days.size, ...effectOf(late, again), hours, money: paid };
}

/** A second person at a bench, where people are counted one of them, who is paid already; "": one more in the shop, in every shift until the job is done. */
function further(late: Late, station: string): Rescue[] {
  const { jobs, options, week, shop, at } = late;
  const isBench = !MACHINE_STATIONS.some((name) => name.toLowerCase() === station.toLowerCase());
  const isOwn = isCounted(shop.calendar);
  if (station === "" ? !isOwn : !isBench) return [];
  const again = replanWeek(jobs, { ...options, further: new Map([[station, 1]]) }, week);
  if (!isTied(late, again)) return [];
  const last = again.machines.findLast(({ name }) => name.toLowerCase() === station.toLowerCase())?.steps ?? [];
  const bench = last.reduce((sum, i) => {
    const { run, setUp, work } = itemAt(again.steps, i);
    return sum + (run + setUp) * (work?.people ?? 0);
  }, 0);
  const shifts = workBetween(week.now, again.jobs[at]?.finish ?? week.now, calendarOf(shop.calendar));
  const hours = (station === "" ? shifts : isOwn ? 0 : bench) / SECONDS_PER_HOUR;
  const paid = refusalOr(() => money(hours * shop.rates.get("secondPerson")));
  return [{ ...NONE, kind: "further", station, ...effectOf(late, again), hours, money: paid }];
}

/** The job's own lines that decide there go to the vendor who could do them. */
function outside(late: Late, station: string, chain: readonly PlannedStep[]): Rescue[] {
  const { jobs, options, week, at } = late;
  const { name, plan } = itemAt(jobs, at);
  const steps = chain.filter((step) => step.job === at && !step.isStarted && step.station.vendorDays !== undefined);
  if (steps.length === 0) return [];
  const lines = [...new Set(steps.map(({ line }) => line))];
  const sent = new Set([...(options.sent ?? []), ...lines.map(({ row }) => sentKey(name, row, station))]);
  const again = replanWeek(jobs, { ...options, sent }, week);
  if (!isTied(late, again)) return [];
  const paid = refusalOr(() => {
    const { minimum = 0 } = firstOf(steps).station;
    const price = lines.reduce((sum, line) => sum + priceOf(line, firstOf(steps).station), 0);
    const works = lines.flatMap((line) => plan.workOf(line).works).filter((work) => work.station.name === station);
    const here = works.reduce((sum, work) => sum + costOf(work, plan.shop), 0);
    const away = Math.max(minimum, price) * (1 + (plan.shop.rates.find("outsideMarkUp") ?? 0));
    return { hours: -peopleHours(works), money: money(away - here) };
  });
  return [{ ...NONE, kind: "outside", station, ...linesOf(lines), ...effectOf(late, again), ...costsOf(paid) }];
}

/** Throws the Refusal of a price that the stations lack. */
function priceOf({ plan: { line, blank, blanks } }: QuotedLine, station: Station): number {
  const amount = line.operations.find((each) => each.station.toLowerCase() === station.name.toLowerCase())?.amount;
  return priceEachOf(station) * blanks * unitsOf(line, station, measuresOf(line, blank), amount);
}

/**
 * The same work in another order: before one job that stands in its way while nobody else is harmed, or before all of them.
 * Of those that save the job the one that harms the others least, else the one that saves most.
 */
function before(late: Late): Rescue[] {
  const { jobs, options, week, at } = late;
  const { name } = itemAt(jobs, at);
  const weights = new Map(options.weights);
  weights.set(name, (weights.get(name) ?? 1) * FIRST);
  const inWay = [...new Set(itemAt(week.jobs, at).chain.map((i) => itemAt(week.steps, i).job))].filter(
    (job) => job !== at,
  );
  const tried = [week.orders, ...(options.tried ?? [])];
  const way = (giving: string, own: WeekOptions): Rescue => {
    const again = replanWeek(jobs, { ...own, tried }, week);
    tried.push(again.orders);
    // Late hours are counted against the dates that were asked for, not those that protect the others.
    const told = planWeek(jobs, { ...options, units: 0, tried: [again.orders] });
    return {
      ...NONE,
      kind: "order",
      station: "",
      before: giving,
      ...effectOf(late, told),
      hours: 0,
      money: money(0),
    };
  };
  const found = [
    ...inWay.slice(0, MOST_IN_WAY).map((job) => {
      const { name: giving } = itemAt(jobs, job);
      const others = week.jobs.filter((_, i) => i !== at && i !== job);
      const unharmed = new Map([...weights, ...others.map((each) => [each.name, UNHARMED] as const)]);
      const dues = new Map(options.dues);
      for (const { name: other, finish } of others)
        dues.set(other, (due) => (finish === undefined ? due : (Math.max(due ?? finish, finish) as Instant)));
      return way(giving, { ...options, weights: unharmed, dues });
    }),
    way("", { ...options, weights }),
  ].filter(({ saves }) => saves >= ROUND);
  const saving = found.filter(({ late: left }) => left <= 0).sort((a, b) => a.others - b.others);
  return [...saving, ...found.sort((a, b) => b.saves - a.saves || a.others - b.others)].slice(0, 1);
}
