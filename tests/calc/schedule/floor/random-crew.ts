/** Small floors whose people are counted, with a checker and a search of all orders written apart from the planner. */
import {
  type Instant,
  instant,
  intervalsFrom,
  SECONDS_PER_DAY,
  type WorkCalendar,
} from "../../../../src/calc/schedule/calendar.ts";
import type { CrewSpan, FloorPlan, Operation } from "../../../../src/calc/schedule/floor/problem.ts";
import { type Drawn, doneAt, drawnFloor, lateOf, START, setUpBehind } from "./random-floor.ts";

const HOUR = 3600;
const CHANGE = 10 * HOUR; // when the second shift of people comes

/** People before and after ten o'clock, every day. */
export type Crew = readonly [morning: number, afternoon: number];
export interface Staffed extends Drawn {
  readonly crew: Crew;
}

const midnight = (at: number) => Math.floor(at / SECONDS_PER_DAY) * SECONDS_PER_DAY;

export const withCrew = (drawn: Drawn, crew: Crew): Staffed => ({
  ...drawn,
  crew,
  problem: {
    ...drawn.problem,
    *crew(): Generator<CrewSpan> {
      for (let day = midnight(START); ; day += SECONDS_PER_DAY) {
        yield { from: day, people: crew[0] };
        yield { from: day + CHANGE, people: crew[1] };
      }
    },
  },
});

/** Every third one of a single person, the others of two or three. */
export function drawnCrew(seed: number, most: number): Staffed {
  const drawn = drawnFloor(seed, most);
  const { problem } = drawn;
  if (seed % 3 > 0) return withCrew(drawn, [2 + (seed % 2), 2 + ((seed >> 1) % 2)]);
  const operations = problem.operations.map((each) => ({ ...each, people: 1 }));
  return withCrew({ ...drawn, problem: { ...problem, operations } }, [1, 1]);
}

interface Taken {
  readonly from: number;
  readonly to: number;
  readonly people: number;
}

function hours(calendar: WorkCalendar, begin: number, end: number): [number, number][] {
  const found: [number, number][] = [];
  for (const { from, to } of intervalsFrom(calendar, begin as Instant, Math.floor(end / SECONDS_PER_DAY)))
    if (from < end) found.push([from, Math.min(to, end)]);
  return found;
}

const thereAt = ([morning, afternoon]: Crew, at: number) => (at - midnight(at) < CHANGE ? morning : afternoon);

/** No more at work at any moment than are there: looked at where something begins. */
const isTooMany = (crew: Crew, taken: readonly Taken[]): boolean =>
  taken.some(({ from, to }) =>
    [from, ...taken.map((each) => each.from), midnight(from) + CHANGE]
      .filter((at) => at >= from && at < to)
      .some(
        (at) =>
          taken.reduce((sum, each) => sum + (each.from <= at && at < each.to ? each.people : 0), 0) > thereAt(crew, at),
      ),
  );

const takenBy = (
  { calendars, problem }: Staffed,
  { station, people }: Operation,
  begin: number,
  end: number,
): Taken[] =>
  problem.stations[station]!.machines === Infinity || end <= begin
    ? []
    : hours(calendars[station]!, begin, end).map(([from, to]) => ({ from, to, people }));

/** What is wrong with who stands where; nothing where every set-up and run has its people. */
export function crewFaultsOf(drawn: Staffed, { machines, begins = [], ready, finish, setUp }: FloorPlan): string[] {
  const { operations, start } = drawn.problem;
  const faults: string[] = [];
  const taken = operations.flatMap((each, i) => {
    const isSet = setUp[i]! > 0 ? doneAt(drawn, each.station, begins[i]!, setUp[i]!) : begins[i]!;
    if (setUp[i]! > 0 && isSet > ready[i]!) faults.push(`${i} runs before it is set up`);
    const own = machines.find((all) => all.includes(i));
    const before = own?.[own.indexOf(i) - 1];
    if (own && begins[i]! < (before === undefined ? start : finish[before]!)) faults.push(`${i} is set up too soon`);
    return [
      ...(setUp[i]! > 0 ? takenBy(drawn, each, begins[i]!, isSet) : []),
      ...takenBy(drawn, each, ready[i]!, finish[i]!),
    ];
  });
  if (isTooMany(drawn.crew, taken)) faults.push("more people are at work than are there");
  return faults;
}

/** Least lateness, and then least set-up: every order in which runs and set-ups can take machines and people. */
export function bruteForceCrew(drawn: Staffed): { late: number; setUp: number } {
  const { problem, crew } = drawn;
  const { operations, stations } = problem;
  const first: number[] = [];
  stations.reduce((sum, { machines }, i) => {
    first[i] = sum;
    return sum + (machines === Infinity ? 0 : machines);
  }, 0);
  let best = { late: Infinity, setUp: Infinity };
  const done = operations.map(() => Number.NaN);
  const last: (number | undefined)[] = [];
  const isSetFor: ({ i: number; at: number } | undefined)[] = [];
  const soonest = (i: number, from: number, work: number, taken: readonly Taken[]): [number, Taken[]] => {
    const own = operations[i]!;
    if (work === 0) return [from, []];
    const changes = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((day) => midnight(from) + CHANGE + day * SECONDS_PER_DAY);
    const moments = [from, ...taken.map(({ to }) => to), ...changes].filter((at) => at >= from).sort((a, b) => a - b);
    for (const at of moments) {
      const mine = takenBy(drawn, own, at, doneAt(drawn, own.station, instant(at), work));
      if (!isTooMany(crew, [...taken, ...mine])) return [at, mine];
    }
    throw new Error("never enough people");
  };
  const goOn = (left: number, setUps: number, taken: readonly Taken[]) => {
    const known = lateOf(
      {
        ...problem,
        deliveries: problem.deliveries.filter((each) => each.operations.every((i) => !Number.isNaN(done[i]!))),
      },
      done,
    );
    if (known > best.late || (known === best.late && setUps >= best.setUp)) return;
    if (left === 0) {
      best = { late: known, setUp: setUps };
      return;
    }
    operations.forEach((operation, i) => {
      const { after, station, release, run } = operation;
      if (!Number.isNaN(done[i]!)) return;
      const isReady = after.every((part) => !Number.isNaN(done[part]!));
      const parts = Math.max(release, ...after.map((part) => done[part]!));
      const { machines } = stations[station]!;
      if (machines === Infinity) {
        if (!isReady) return;
        done[i] = doneAt(drawn, station, parts, run);
        goOn(left - 1, setUps, taken);
        done[i] = Number.NaN;
        return;
      }
      for (let m = first[station]!; m < first[station]! + machines; m++) {
        const set = isSetFor[m];
        if (set?.i === i && isReady) {
          const [at, mine] = soonest(i, Math.max(parts, set.at), run, taken);
          const before = last[m];
          done[i] = doneAt(drawn, station, at, run);
          last[m] = i;
          isSetFor[m] = undefined;
          goOn(left - 1, setUps, [...taken, ...mine]);
          isSetFor[m] = set;
          last[m] = before;
          done[i] = Number.NaN;
        }
        if (set || isSetFor.some((each) => each?.i === i)) continue;
        const before = last[m] === undefined ? undefined : operations[last[m]!];
        const setUp = setUpBehind(before, operation);
        const free = last[m] === undefined ? problem.start : done[last[m]!]!;
        const [at, mine] = soonest(i, free, setUp, taken);
        isSetFor[m] = { i, at: setUp > 0 ? doneAt(drawn, station, at, setUp) : at };
        goOn(left, setUps + setUp, [...taken, ...mine]);
        isSetFor[m] = undefined;
      }
    });
  };
  goOn(operations.length, 0, []);
  return best;
}
