/** Whose stations and shifts the week goes by, and where the jobs' own differ. */
import { type Instant, type WorkCalendar, withOvertime } from "../../calc/schedule/calendar.ts";
import { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { contentId } from "../../units/content.ts";
import { noAnswer } from "../../units/refusal.ts";
import { calendarOf } from "../nouns/calendar.ts";
import { hasTable, type Shop, type TableName } from "../nouns/shop.ts";
import { planBill } from "../plan.ts";
import type { WeekFault } from "./faults.ts";
import type { WeekJob } from "./steps.ts";
import type { WeekOptions } from "./week.ts";

type WorkingShop = Pick<Shop, "calendar">;

export function calendarFor(
  { calendar }: WorkingShop,
  station: string | undefined,
  { overtime }: WeekOptions,
): WorkCalendar {
  const own = calendarOf(calendar, station);
  const extra = overtime?.get(station ?? "") ?? overtime?.get("") ?? 0;
  return extra > 0 ? withOvertime(own, extra) : own;
}

/** Some weekday must be worked: a single dated day would end. */
const clockFor = (calendar: WorkCalendar, now: Instant): WorkClock | undefined =>
  calendar.week.some((shifts) => shifts.length > 0) ? new WorkClock(calendar, now) : undefined;

/** By station; undefined for one that never works. Throws a Refusal where the shop itself never does. */
export function clocksOf(shop: WorkingShop, options: WeekOptions): (station: string) => WorkClock | undefined {
  if (!hasShifts(shop)) throw noShifts("none");
  const clocks = new Map<string, WorkClock | undefined>();
  return (station) => {
    const key = station.toLowerCase();
    if (!clocks.has(key)) clocks.set(key, clockFor(calendarFor(shop, station, options), options.now));
    return clocks.get(key);
  };
}

const noShifts = (given: string) =>
  noAnswer("calendar", "one with a shift on some weekday", given, "give Start and End of the weekdays that are worked");

const hasShifts = ({ calendar }: WorkingShop): boolean => calendarOf(calendar).week.some((shifts) => shifts.length > 0);

/** Tables that the week goes by: where they differ, two plans were made for two shops. */
const COMPARED: readonly TableName[] = [
  "brakes",
  "dies",
  "punches",
  "shears",
  "waterjets",
  "stations",
  "rates",
  "calendar",
];

export function rulingShop(given: readonly WeekJob[], fault: (fault: WeekFault) => void): Shop {
  for (const { name, plan } of given)
    if (!hasShifts(plan.shop) || !hasTable(plan.shop, "calendar")) fault({ kind: "no calendar", job: name });
  if (given.length === 0) throw noAnswer("week", "at least one job", "none");
  const ruling = [...given]
    .sort((a, b) => Number(a.isOfBefore ?? false) - Number(b.isOfBefore ?? false))
    .find(({ plan }) => hasShifts(plan.shop));
  if (!ruling) throw noShifts(`none in ${given.map(({ name }) => name).join(", ")}`);
  for (const { name, plan } of given) {
    const tables = COMPARED.filter((table) => contentOf(plan.shop, table) !== contentOf(ruling.plan.shop, table));
    const named = tables.filter((table) => table !== "calendar" || hasShifts(plan.shop));
    if (named.length > 0) fault({ kind: "other shop", job: name, than: ruling.name, tables: named });
  }
  return ruling.plan.shop;
}

/** A job whose calendar has no shift is planned in the shop's: its own plan would never end. */
export const inShifts = (job: WeekJob, { calendar }: Shop): WeekJob =>
  hasShifts(job.plan.shop) || !hasTable(job.plan.shop, "calendar")
    ? job
    : { ...job, plan: planBill({ ...job.plan.shop, calendar }, job.plan.rows) };

/** Work waiting at a station is not part of the shop: the open jobs are what waits. */
const contentOf = (shop: Shop, table: TableName): number =>
  contentId(
    table === "rates"
      ? shop.rates.entries()
      : table === "stations"
        ? shop.stations.map((each) => ({ ...each, queue: 0 }))
        : shop[table as Exclude<TableName, "outlines" | "press" | "rates">],
  );
