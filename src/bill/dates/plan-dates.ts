/** The fifth stage: whether each line is done by the time it must leave, and what saves it where it is not. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import { latestStart, workBetween } from "../../calc/schedule/finish.ts";
import { Deadline, type Place, type Verdict } from "../../calc/schedule/what-if.ts";
import { SECONDS_PER_HOUR, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { step, type Working } from "../../units/working.ts";
import { lineKey } from "../lines/line-key.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import { calendarOf } from "../nouns/calendar.ts";
import type { Shop } from "../nouns/shop.ts";
import { type StationWork, timeOf } from "../time/station-work.ts";
import { dueOf } from "./due.ts";

export interface LineDates extends Verdict {
  /** When it must leave. */
  readonly due: Instant;
  /** It breaks that time, whatever overtime, a second shift or sending out would save. */
  readonly isLate: boolean;
  /** Working hours of the shop past that. */
  readonly lateBy: Seconds;
  /** The same with the shifts as they are and nothing sent out. */
  readonly lateAsItIs: Seconds;
}

export interface StationLoad {
  readonly station: string;
  readonly queue: Seconds;
  readonly load: Seconds;
  readonly available: Seconds;
  readonly overtime: Seconds;
  readonly short: Seconds;
  readonly finish: Instant;
  /** From which the load of this bill alone is still done by the time the job must leave; undefined without a load. */
  readonly latestStart: Instant | undefined;
  /** The load by the machines of the station, by name; one without a machine has none. */
  readonly machines: readonly { readonly name: string; readonly load: Seconds }[];
}

export interface DatesPlan {
  readonly lines: ReadonlyMap<LinePlan, LineDates>;
  readonly stations: readonly StationLoad[];
  /** How many lines are late. */
  readonly late: number;
}

export interface TimedLine {
  readonly plan: LinePlan;
  readonly works: readonly StationWork[];
  readonly vendorDays: number;
}

/** Work goes in the order in which it is due, then the shortest first, then by what the lines say. */
export function planDates(
  lines: readonly TimedLine[],
  start: Instant,
  due: Instant,
  { stations, calendar, rates, job }: Pick<Shop, "stations" | "calendar" | "rates" | "job">,
  work?: Working,
): DatesPlan {
  const general = calendarOf(calendar);
  const secondShift = rates.find("secondShift");
  const deadline = new Deadline(start, due, general, {
    overtime: seconds((rates.find("overtimePerDay") ?? 0) * SECONDS_PER_HOUR),
    secondShift: secondShift === undefined ? undefined : seconds(secondShift * SECONDS_PER_HOUR),
  });
  const places = new Map(
    stations.map(({ name, queue, vendorDays }): [string, Place] => [
      name,
      { name, queue, vendorDays, calendar: calendarOf(calendar, name) },
    ]),
  );
  const wanted = ({ plan }: TimedLine) => dueOf(plan.line, job) ?? due;
  const total = ({ works }: TimedLine) => works.reduce((sum, each) => sum + timeOf(each), 0);
  const order = [...lines].sort(
    (a, b) => wanted(a) - wanted(b) || total(a) - total(b) || (lineKey(a.plan.line) < lineKey(b.plan.line) ? -1 : 1),
  );
  const found = new Map<LinePlan, LineDates>();
  for (const line of order) {
    const tasks = line.works.map((each) => ({
      place: places.get(each.station.name)!,
      machine: each.machine,
      time: timeOf(each),
    }));
    const leaves = wanted(line);
    const verdict = deadline.take(tasks, line.vendorDays, leaves);
    const lateBy = (done: Instant) => workBetween(leaves, done, general);
    found.set(line.plan, {
      ...verdict,
      due: leaves,
      isLate: verdict.verdict === "breaks it",
      lateBy: lateBy(verdict.finish),
      lateAsItIs: lateBy(verdict.asItIs),
    });
  }
  const late = [...found.values()].filter(({ isLate }) => isLate).length;
  step(work, "late", "lines that break the due time", late, "count", "queues and loads in the shifts (derived)");
  return { lines: found, stations: [...places.values()].map((place) => loadOf(place, deadline)), late };
}

const loadOf = (place: Place, deadline: Deadline): StationLoad => ({
  station: place.name,
  queue: place.queue,
  load: deadline.load(place),
  ...deadline.hours(place),
  finish: deadline.finishOf(place),
  latestStart: deadline.load(place) > 0 ? latestStart(deadline.due, deadline.load(place), place.calendar) : undefined,
  machines: [...deadline.machines(place)]
    .filter(([name]) => name !== "")
    .map(([name, load]) => ({ name, load }))
    .sort((a, b) => (a.name < b.name ? -1 : 1)),
});
