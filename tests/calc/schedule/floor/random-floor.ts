/** Small floors drawn at random, and a checker and a search of all schedules written apart from the planner. */
import { type Instant, instant, SECONDS_PER_DAY, type WorkCalendar } from "../../../../src/calc/schedule/calendar.ts";
import { finish } from "../../../../src/calc/schedule/finish.ts";
import type { FloorPlan, FloorProblem, Operation } from "../../../../src/calc/schedule/floor/problem.ts";
import { vendorClock, WorkClock } from "../../../../src/calc/schedule/floor/work-clock.ts";
import { afterWorkingDays } from "../../../../src/calc/schedule/working-days.ts";
import { seconds } from "../../../../src/calc/time/seconds.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";

const HOUR = 3600;
/** A Monday, 7:00. */
export const START: Instant = instant(46_000 * SECONDS_PER_DAY + 7 * HOUR);

export interface Drawn {
  readonly problem: FloorProblem;
  /** By station; a vendor's is the shop's. */
  readonly calendars: readonly WorkCalendar[];
  /** Operations of each job, in order. */
  readonly jobs: readonly (readonly number[])[];
}

export const weekly = (from: number, to: number): WorkCalendar => ({
  week: [0, 1, 2, 3, 4, 5, 6].map((day) => (day === 0 || day === 6 ? [] : [{ from: from * HOUR, to: to * HOUR }])),
  exceptions: new Map(),
});

export const problemOf = (calendars: readonly WorkCalendar[], drawn: FloorProblem): FloorProblem => ({
  ...drawn,
  stations: drawn.stations.map(({ machines }, i) => ({
    machines,
    clock: machines === Infinity ? vendorClock(calendars[i]!) : new WorkClock(calendars[i]!, START),
  })),
});

export function drawnFloor(seed: number, most = 6): Drawn {
  const next = randomFrom(seed);
  const below = (count: number) => Math.floor(next() * count);
  const machines = [1, 1 + below(2), below(3) === 0 ? Infinity : 1];
  const calendars = machines.map(() => weekly(6 + below(3), 11 + below(3)));
  const changes = [0, 1, 2].map(() => [0, 1, 2].map(() => below(3) * 900));
  const operations: Operation[] = [];
  const jobs: number[][] = [];
  while (operations.length < most) {
    const own: number[] = [];
    for (let left = Math.min(1 + below(3), most - operations.length); left > 0; left--) {
      const station = below(3);
      const key = below(3);
      const isVendor = machines[station] === Infinity;
      operations.push({
        station,
        run: isVendor ? 1 + below(2) : 600 * (1 + below(20)),
        own: isVendor ? 0 : below(3) * 300,
        lot: operations.length,
        change: isVendor ? 0 : changes[station]![key]!,
        key: isVendor ? 0 : key,
        after: own.length === 0 ? [] : [operations.length - 1],
        release: START,
        frozen: undefined,
        people: 1 + (operations.length % 2),
      });
      own.push(operations.length - 1);
    }
    jobs.push(own);
  }
  const deliveries = jobs.map((own) => ({
    due: START + HOUR * below(60),
    weight: 1 + below(3),
    operations: [own.at(-1)!],
  }));
  const stations = machines.map((own) => ({ machines: own, clock: vendorClock(calendars[0]!) }));
  return { problem: problemOf(calendars, { start: START, stations, operations, deliveries }), calendars, jobs };
}

export const setUpBehind = (last: Operation | undefined, { own, lot, change, key }: Operation): number =>
  (last?.lot === lot ? 0 : own) + (last?.key === key ? 0 : change);

/** Working time through the calendar itself, not through the planner's clocks. */
const known = new Map<WorkCalendar, Map<number, number>>();
export function doneAt({ calendars, problem }: Drawn, station: number, start: number, work: number): number {
  const calendar = calendars[station]!;
  const memory = known.get(calendar) ?? new Map<number, number>();
  known.set(calendar, memory);
  const key = start * 1e6 + work;
  const isVendor = problem.stations[station]!.machines === Infinity;
  const found =
    memory.get(key) ??
    (isVendor ? afterWorkingDays(instant(start), work, calendar) : finish(instant(start), seconds(work), calendar));
  memory.set(key, found);
  return found;
}

export const lateOf = ({ deliveries }: FloorProblem, done: readonly number[]): number =>
  deliveries.reduce(
    (sum, { due, weight, operations }) =>
      sum + weight * Math.max(0, Math.max(...operations.map((i) => done[i]!)) - due),
    0,
  );

/** What is wrong with a plan, in words; nothing where it can be worked to. */
export function faultsOf(drawn: Drawn, plan: FloorPlan): string[] {
  const { operations, stations } = drawn.problem;
  const faults: string[] = [];
  let setUps = 0;
  operations.forEach(({ after, release, station, run }, i) => {
    if (plan.ready[i]! < release) faults.push(`${i} begins before its release`);
    for (const part of after)
      if (plan.ready[i]! < plan.finish[part]!) faults.push(`${i} begins before ${part} is done`);
    if (stations[station]!.machines === Infinity) {
      if (doneAt(drawn, station, plan.ready[i]!, run) !== plan.finish[i]) faults.push(`${i} ends wrongly`);
      if (plan.machines.some((own) => own.includes(i))) faults.push(`${i} needs no machine`);
    } else if (plan.machines.flat().filter((other) => other === i).length !== 1) faults.push(`${i} is not there once`);
  });
  let machine = 0;
  stations.forEach(({ machines }, station) => {
    for (let m = 0; machines !== Infinity && m < machines; m++, machine++)
      plan.machines[machine]!.forEach((i, place, own) => {
        const last = place === 0 ? undefined : own[place - 1]!;
        const setUp = setUpBehind(last === undefined ? undefined : operations[last], operations[i]!);
        setUps += setUp;
        if (operations[i]!.station !== station) faults.push(`${i} is at a station of others`);
        if (last !== undefined && plan.ready[i]! < plan.finish[last]!) faults.push(`${i} overlaps ${last}`);
        const free = last === undefined ? drawn.problem.start : plan.finish[last]!;
        if (plan.ready[i]! < doneAt(drawn, station, free, setUp)) faults.push(`${i} begins before it is set up`);
        if (doneAt(drawn, station, plan.ready[i]!, operations[i]!.run) !== plan.finish[i])
          faults.push(`${i} ends wrongly`);
      });
  });
  if (plan.worth.late !== lateOf(drawn.problem, plan.finish)) faults.push("late hours are counted wrongly");
  if (plan.worth.setUp !== setUps) faults.push("set-up is counted wrongly");
  return faults;
}

/** Least lateness, and then least set-up, of all orders of all operations on all machines. */
export function bruteForce(drawn: Drawn): { late: number; setUp: number } {
  const { operations, stations } = drawn.problem;
  const first: number[] = [];
  stations.reduce((sum, { machines }, i) => {
    first[i] = sum;
    return sum + (machines === Infinity ? 0 : machines);
  }, 0);
  let best = { late: Infinity, setUp: Infinity };
  const done = operations.map(() => Number.NaN);
  const last: (number | undefined)[] = [];
  const goOn = (left: number, setUps: number) => {
    if (left === 0) {
      const late = lateOf(drawn.problem, done);
      if (late < best.late || (late === best.late && setUps < best.setUp)) best = { late, setUp: setUps };
    }
    operations.forEach((operation, i) => {
      const { after, station, release, run } = operation;
      if (!Number.isNaN(done[i]!) || after.some((part) => Number.isNaN(done[part]!))) return;
      const { machines } = stations[station]!;
      const parts = Math.max(release, ...after.map((part) => done[part]!));
      for (let m = first[station]!; m < first[station]! + (machines === Infinity ? 1 : machines); m++) {
        const isVendor = machines === Infinity;
        const before = isVendor ? undefined : last[m];
        const setUp = isVendor ? 0 : setUpBehind(before === undefined ? undefined : operations[before], operation);
        const free = before === undefined ? drawn.problem.start : done[before]!;
        const start = isVendor ? parts : Math.max(parts, doneAt(drawn, station, free, setUp));
        done[i] = doneAt(drawn, station, start, run);
        if (!isVendor) last[m] = i;
        goOn(left - 1, setUps + setUp);
        if (!isVendor) last[m] = before;
        done[i] = Number.NaN;
      }
    });
  };
  goOn(operations.length, 0);
  return best;
}
