/** Steps on one calendar: when each is done, on which machine, what decides it and what it may still wait. */
import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { chainTo, latestReady } from "../../calc/schedule/floor/latest.ts";
import { planFloor } from "../../calc/schedule/floor/plan-floor.ts";
import type { FloorPlan } from "../../calc/schedule/floor/problem.ts";
import type { WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { lineName } from "../line-name.ts";
import type { Shop } from "../nouns/shop.ts";
import type { WeekFault } from "./faults.ts";
import { floorOf, machinesFrom, type WeekFloor } from "./floor-of.ts";
import { loadByDay } from "./load.ts";
import { type OpenJob, type OpenStep, stepKey } from "./open-step.ts";
import { clocksOf } from "./ruling-shop.ts";
import type { Placed, Week, WeekDelivery, WeekJobDates, WeekOptions } from "./week.ts";

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
  const steps = withShifts(open, clockOf, ({ station, job, line }) =>
    faults.push({ kind: "no shift", station: station.name, job: jobs[job]!.name, line: lineName(line) }),
  );
  const floor = floorOf({ given: jobs, steps, shop, clockOf, options }, (fault) => faults.push(fault));
  const { problem, places } = floor;
  const keys = new Map(steps.map((step, i) => [stepKey(jobs, step), i]));
  const tried = (options.tried ?? []).map((orders) => machinesFrom(orders, keys, problem, places));
  const { plan, bound, isProved } = planFloor(problem, { units: options.units ?? UNITS, tried });
  return answer({ ...floor, given: jobs, now: options.now, steps, plan, clockOf, faults, bound, isProved });
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
  if (out.size === 0) return [...steps];
  const kept = steps.flatMap((step, i) => (out.has(lineOf(step)) ? [] : [i]));
  const place = new Map(kept.map((i, at) => [i, at]));
  return kept.map((i) => ({ ...steps[i]!, after: steps[i]!.after.map((part) => place.get(part)!) }));
}

interface Planned<S extends OpenStep> extends WeekFloor {
  readonly given: readonly OpenJob[];
  readonly now: Instant;
  readonly steps: readonly S[];
  readonly plan: FloorPlan;
  readonly clockOf: (station: string) => WorkClock | undefined;
  readonly faults: readonly WeekFault[];
  readonly bound: Week["bound"];
  readonly isProved: boolean;
}

function answer<S extends OpenStep>(planned: Planned<S>): Week<S> {
  const { given, now, steps, places, problem, plan, own, clockOf, faults, bound, isProved } = planned;
  const latest = latestReady(problem, plan);
  const done = (last: readonly number[]) => last.reduce((a, b) => (plan.finish[b]! > plan.finish[a]! ? b : a));
  const deliveries = own.map(({ job, due, last, steps: its }): WeekDelivery => {
    const finish = instant(plan.finish[done(last)]!);
    return { job, due, finish, late: due === undefined ? 0 : Math.max(0, finish - due), steps: its };
  });
  const jobs = given.map(({ name, isRush }, job): WeekJobDates => {
    const its = own.filter((each) => each.job === job);
    const mine = deliveries.filter((each) => each.job === job);
    const dues = mine.flatMap(({ due }) => (due === undefined ? [] : [due]));
    // By its own dates alone: how long it may wait is no question of who comes behind it.
    const dated = problem.deliveries.map((each, d) => (own[d]?.job === job ? each : { ...each, due: Infinity }));
    const alone = latestReady({ ...problem, deliveries: dated }, plan);
    const starts = its.flatMap((each) => each.steps.map((i) => alone[i]!));
    // Of several deliveries the latest one by its own date decides, else the last one.
    const worst = its.reduce<(typeof its)[number] | undefined>((a, b) => {
      const by = (each: typeof b) => plan.finish[done(each.last)]! - (each.due ?? now);
      return !a || by(b) > by(a) ? b : a;
    }, undefined);
    const first = Math.min(Infinity, ...starts);
    return {
      name,
      due: dues.length > 0 ? instant(Math.max(...dues)) : undefined,
      finish: mine.length > 0 ? instant(Math.max(...mine.map(({ finish }) => finish))) : undefined,
      late: mine.reduce((sum, { late }) => sum + late, 0),
      latestStart: first < Infinity ? instant(first) : undefined,
      chain: worst ? chainTo(problem, plan, done(worst.last)) : [],
      isRush,
    };
  });
  const critical = jobs.map(({ chain }) => new Set(chain));
  const placed = steps.map((step, i): Placed<S> => {
    const clock = step.work ? clockOf(step.station.name) : undefined;
    const [ready, setUp] = [plan.ready[i]!, plan.setUp[i]!];
    const isDated = latest[i]! < Infinity;
    return {
      ...step,
      begins: instant(setUp > 0 && clock ? clock.latest(ready, setUp) : clock ? clock.opens(ready) : ready),
      ready: instant(clock ? clock.opens(ready) : ready),
      finish: instant(plan.finish[i]!),
      setUp,
      latest: isDated ? instant(latest[i]!) : undefined,
      slack: !isDated
        ? undefined
        : clock
          ? clock.workUntil(latest[i]!) - clock.workUntil(ready) + Math.min(0, latest[i]! - now)
          : latest[i]! - ready,
      isCritical: critical[step.job]!.has(i),
    };
  });
  let at = 0;
  const machines = problem.stations.flatMap(({ machines: count }, station) =>
    count === Infinity
      ? []
      : Array.from({ length: count }, (_, m) => ({
          name: places[station]!,
          key: `${places[station]} ${m + 1}`,
          steps: plan.machines[at++]!,
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
      problem.stations.map(({ machines: count }, i) => ({ name: places[i]!, count })),
      clockOf,
    ),
    worth: plan.worth,
    bound,
    isProved,
    faults,
    orders: new Map(machines.map(({ key, steps: its }) => [key, its.map((i) => stepKey(given, steps[i]!))])),
  };
}
