/** The fifth stage: whether each line is done by the time it must leave, and what saves it where it is not. */
import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { finish as laid, workBetween } from "../../calc/schedule/finish.ts";
import { Deadline, type Place, type Verdict } from "../../calc/schedule/what-if.ts";
import { SECONDS_PER_HOUR, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { entryOf } from "../../units/certain.ts";
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
  /** Not done by then with the shifts as they are: nobody has ordered overtime, and no price includes it. */
  readonly isLate: boolean;
  /** Working hours past that, of the shop or of the station that decides, whichever are more. */
  readonly lateBy: Seconds;
  /** The same with what saves it, or saves most. */
  readonly lateAtBest: Seconds;
}

interface StationLoad {
  readonly station: string;
  readonly queue: Seconds;
  readonly load: Seconds;
  readonly available: Seconds;
  readonly overtime: Seconds;
  readonly short: Seconds;
  readonly finish: Instant;
  /** The load by the machines of the station, by name; one without a machine has none. */
  readonly machines: readonly { readonly name: string; readonly load: Seconds }[];
}

export interface DatesPlan {
  readonly lines: ReadonlyMap<LinePlan, LineDates>;
  readonly stations: readonly StationLoad[];
  /** How many lines are late, and how many of them overtime, a second shift or sending out would save. */
  readonly late: number;
  readonly saved: number;
  /** When the last line is done, vendors included; undefined where no line has dates. */
  readonly finish: Instant | undefined;
  /**
   * The latest start of the whole plan that keeps every line in time: later by the fewest working hours a line has to
   * spare, or less where shifts or vendor days do not allow that. "past" where a line is late already, undefined where
   * no line has dates.
   */
  latestStart(): Instant | "past" | undefined;
}

interface TimedLine {
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
      place: entryOf(places, each.station.name),
      machine: each.machine,
      time: timeOf(each),
    }));
    const leaves = wanted(line);
    const verdict = deadline.take(tasks, line.vendorDays, leaves);
    const deciding = entryOf(places, verdict.place).calendar;
    const past = (done: Instant) =>
      seconds(Math.max(workBetween(leaves, done, general), workBetween(leaves, done, deciding)));
    found.set(line.plan, {
      ...verdict,
      due: leaves,
      isLate: verdict.verdict !== "in time",
      lateBy: past(verdict.asItIs),
      lateAtBest: past(verdict.finish),
    });
  }
  const dates = [...found.values()];
  const late = dates.filter(({ isLate }) => isLate);
  const saved = late.filter(({ verdict }) => verdict !== "breaks it").length;
  step(work, "late", "lines late as the shifts are", late.length, "count", "queues and loads in the shifts (derived)");
  const putOff = (by: number) => laid(start, seconds(by), general);
  const holds = (by: number) => planDates(lines, putOff(by), due, { stations, calendar, rates, job }).late === 0;
  return {
    lines: found,
    stations: [...places.values()].map((place) => loadOf(place, deadline)),
    late: late.length,
    saved,
    finish: dates.length === 0 ? undefined : instant(Math.max(...dates.map(({ asItIs }) => asItIs))),
    latestStart: () => {
      if (dates.length === 0) return undefined;
      if (late.length > 0) return "past";
      const spare = Math.min(...dates.map((line) => workBetween(line.asItIs, line.due, general)));
      if (holds(spare)) return putOff(spare);
      let [kept, broken] = [0, spare];
      while (broken - kept > SECONDS_PER_MINUTE) {
        const middle = (kept + broken) / 2;
        if (holds(middle)) kept = middle;
        else broken = middle;
      }
      return putOff(kept);
    },
  };
}
const SECONDS_PER_MINUTE = 60; // by definition

const loadOf = (place: Place, deadline: Deadline): StationLoad => ({
  station: place.name,
  queue: place.queue,
  load: deadline.load(place),
  ...deadline.hours(place),
  finish: deadline.finishOf(place),
  machines: [...deadline.machines(place)]
    .filter(([name]) => name !== "")
    .map(([name, load]) => ({ name, load }))
    .sort((a, b) => (a.name < b.name ? -1 : 1)),
});
