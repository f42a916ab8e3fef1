/** Steps on one calendar: when each is done, on which machine, what decides it and what it may still wait. */

import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { boundOf } from "../../calc/schedule/floor/bound.ts";
import { chainTo, latestReady } from "../../calc/schedule/floor/latest.ts";
import { Floor } from "../../calc/schedule/floor/orders.ts";
import { type FloorAnswer, planFloor } from "../../calc/schedule/floor/plan-floor.ts";
import type { FloorPlan } from "../../calc/schedule/floor/problem.ts";
import type { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { itemAt } from "../../units/certain.ts";
import { lineName } from "../line-name.ts";
import type { Shop } from "../nouns/shop.ts";
import type { WeekFault } from "./faults.ts";
import { floorOf, ordersOf, triedFrom, type WeekFloor } from "./floor-of.ts";
import { loadByDay } from "./load.ts";
import { type OpenJob, type OpenStep, stepKey } from "./open-step.ts";
import { clocksOf } from "./ruling-shop.ts";
import { markOf, standing, without } from "./standing.ts";
import type { Placed, Week, WeekDelivery, WeekJobDates, WeekOptions } from "./week.ts";

const MINUTE = 60; // seconds, by definition; a pin is written to the minute

/** Some two seconds for ten jobs of sixty lines (measured). */
const UNITS = 1.6e7;

interface Open<S extends OpenStep> {
  readonly jobs: readonly OpenJob[];
  readonly steps: readonly S[];
  readonly shop: Pick<Shop, "stations" | "calendar">;
}

/** Throws a Refusal where the calendar has no shift. */
export function planSteps<S extends OpenStep>({ jobs, steps: open, shop }: Open<S>, options: WeekOptions): Week<S> {
  const faults: WeekFault[] = [];
  const clockOf = clocksOf(shop, options);
  const fault = (found: WeekFault) => faults.push(found);
  const worked = withShifts(open, clockOf, ({ station, job, line }) =>
    fault({ kind: "no shift", station: station.name, job: itemAt(jobs, job).name, line: lineName(line) }),
  );
  const steps = standing(worked, { jobs, shop, clockOf, options }, fault);
  const floor = floorOf({ given: jobs, steps, shop, clockOf, options }, fault);
  const { problem, places } = floor;
  const keys = new Map(steps.map((step, i) => [stepKey(jobs, step), i]));
  const tried = (options.tried ?? []).map((orders) => triedFrom(orders, keys, problem, places));
  const { units = UNITS, stood } = options;
  const held = stood && steps.map((step) => stood.get(stepKey(jobs, step)) ?? Number.NEGATIVE_INFINITY);
  const found = planFloor(problem, { units, tried, isKept: options.isKept, held });
  let isKept = true;
  steps.forEach((step, i) => {
    const at = instant(itemAt(found.plan.ready, i));
    if (step.pin === undefined || step.lot > 1 || at < step.pin + MINUTE) return;
    isKept = false;
    fault({ kind: "pin missed", ...markOf(jobs, step, "Pinned"), at });
  });
  const judged = withoutPins(floor, found, isKept);
  return answer({ ...floor, given: jobs, now: options.now, steps, plan: found.plan, clockOf, faults, ...judged });
}

/** A pin weighs in the search and is no late hour of anybody's: what is told counts the jobs alone. */
function withoutPins({ problem, own }: WeekFloor, { plan, bound, isProved }: FloorAnswer, isKept: boolean) {
  if (problem.deliveries.length === own.length) return { worth: plan.worth, bound, isProved };
  const deliveries = problem.deliveries.slice(0, own.length);
  const late = deliveries.reduce((sum, { due, weight, operations }) => {
    const finish = Math.max(...operations.map((i) => itemAt(plan.finish, i)));
    return sum + weight * Math.max(0, finish - due);
  }, 0);
  const worth = { ...plan.worth, late };
  // Where every pin is kept, no other plan that keeps them is better.
  return isProved && isKept
    ? { worth, bound: worth, isProved }
    : { worth, bound: boundOf(new Floor({ ...problem, deliveries })), isProved: false };
}

/** A line with a step at a station that never works is left out, all of it. */
function withShifts<S extends OpenStep>(
  steps: readonly S[],
  clockOf: (station: string) => unknown,
  left: (step: S) => void,
): S[] {
  const lineOf = ({ job, line }: OpenStep) => `${job} ${line.row}`;
  const out = new Set<string>();
  for (const step of steps) {
    if (!step.work || clockOf(step.station.name) || out.has(lineOf(step))) continue;
    out.add(lineOf(step));
    left(step);
  }
  return without(steps.map((step) => (out.has(lineOf(step)) ? undefined : step)));
}

interface Planned<S extends OpenStep> extends WeekFloor {
  readonly given: readonly OpenJob[];
  readonly now: Instant;
  readonly steps: readonly S[];
  readonly plan: FloorPlan;
  readonly clockOf: (station: string) => WorkClock | undefined;
  readonly faults: readonly WeekFault[];
  readonly worth: Week["worth"];
  readonly bound: Week["bound"];
  readonly isProved: boolean;
}

function answer<S extends OpenStep>(planned: Planned<S>): Week<S> {
  const { given, now, steps, places, problem, plan, own, clocks, clockOf, faults, worth, bound, isProved } = planned;
  const latest = latestReady(problem, plan);
  const done = (last: readonly number[]) =>
    last.reduce((a, b) => (itemAt(plan.finish, b) > itemAt(plan.finish, a) ? b : a));
  const deliveries = own.map(({ job, due, last, steps: its }): WeekDelivery => {
    const finish = instant(itemAt(plan.finish, done(last)));
    return { job, due, finish, late: due === undefined ? 0 : Math.max(0, finish - due), steps: its };
  });
  const jobs = given.map(({ name, isRush }, job): WeekJobDates => {
    const its = own.filter((each) => each.job === job);
    const mine = deliveries.filter((each) => each.job === job);
    const dues = mine.flatMap(({ due }) => (due === undefined ? [] : [due]));
    // By its own dates alone: how long it may wait does not depend on what comes behind it.
    const dated = problem.deliveries.map((each, d) => (own[d]?.job === job ? each : { ...each, due: Infinity }));
    const alone = latestReady({ ...problem, deliveries: dated }, plan);
    const starts = its.flatMap((each) =>
      each.steps.map((i) => {
        const [run, setUp] = [itemAt(alone, i), itemAt(plan.setUp, i)];
        return setUp > 0 && run < Infinity ? (clocks[i]?.latest(run, setUp) ?? run) : run;
      }),
    );
    // Of several deliveries the latest one by its own date decides, else the last one.
    const worst = its.reduce<(typeof its)[number] | undefined>((a, b) => {
      const by = (each: typeof b) => itemAt(plan.finish, done(each.last)) - (each.due ?? now);
      return !a || by(b) > by(a) ? b : a;
    }, undefined);
    const first = Math.min(Infinity, ...starts);
    return {
      name,
      due: dues.length > 0 ? instant(Math.max(...dues)) : undefined,
      finish: mine.length > 0 ? instant(Math.max(...mine.map(({ finish }) => finish))) : undefined,
      late: mine.reduce((sum, { late }) => sum + late, 0),
      latestStart: first < Infinity ? instant(first) : undefined,
      isStartPast: first < now,
      chain: worst ? chainTo(problem, plan, done(worst.last)) : [],
      isRush,
    };
  });
  const holdsUp = new Set(jobs.flatMap(({ late, chain }) => (late > 0 ? chain : [])));
  const placed = steps.map((step, i): Placed<S> => {
    const clock = clocks[i];
    const [ready, setUp] = [itemAt(plan.ready, i), itemAt(plan.setUp, i)];
    const begins = plan.begins?.[i] ?? ready;
    const isDated = itemAt(latest, i) < Infinity;
    const slack = !isDated
      ? undefined
      : clock
        ? clock.workUntil(itemAt(latest, i)) - clock.workUntil(ready) + Math.min(0, itemAt(latest, i) - now)
        : itemAt(latest, i) - ready;
    return {
      ...step,
      begins: instant(!clock ? ready : setUp > 0 && !plan.begins ? clock.latest(ready, setUp) : clock.opens(begins)),
      ready: instant(clock ? clock.opens(ready) : ready),
      finish: instant(itemAt(plan.finish, i)),
      setUp,
      latest: isDated ? instant(itemAt(latest, i)) : undefined,
      slack,
      isCritical: holdsUp.has(i) || (slack ?? 1) <= 0,
    };
  });
  let at = 0;
  const machines = problem.stations.flatMap(({ machines: count }, station) =>
    count === Infinity
      ? []
      : Array.from({ length: count }, (_, m) => ({
          name: itemAt(places, station),
          key: `${places[station]} ${m + 1}`,
          steps: itemAt(plan.machines, at++),
        })),
  );
  return {
    now,
    jobs,
    steps: placed,
    deliveries,
    machines: machines.map(({ name, steps: its }) => ({ name, steps: its })),
    days: loadByDay(
      now,
      placed,
      problem.stations.map(({ machines: count }, i) => ({ name: itemAt(places, i), count })),
      { clocks, clockOf },
    ),
    worth,
    bound,
    isProved,
    faults,
    orders: ordersOf(
      machines.map(({ key, steps: its }) => [key, its]),
      plan.list,
      (i) => stepKey(given, itemAt(steps, i)),
    ),
  };
}
