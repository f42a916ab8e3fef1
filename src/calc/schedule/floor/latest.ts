import { itemAt } from "../../../units/certain.ts";
import type { FloorPlan, FloorProblem } from "./problem.ts";

/**
 * By operation the latest its run may begin, in the order as it is planned, so that every delivery behind it still leaves
 * when it is due; Infinity where none behind it has a date. Worked back from the due times (critical path method; Kelley
 * and Walker, Eastern Joint Computer Conference 1959; memory, unverified).
 */
export function latestReady({ operations, stations, deliveries }: FloorProblem, plan: FloorPlan): number[] {
  const finish = operations.map(() => Infinity);
  const ready = operations.map(() => Infinity);
  for (const { due, operations: last } of deliveries)
    for (const i of last) finish[i] = Math.min(itemAt(finish, i), due);
  const before = previousOf(plan);
  // What follows another operation is ready no sooner than it, and in the order of the problem behind its parts.
  const order = operations.map((_, i) => i).sort((a, b) => itemAt(plan.ready, b) - itemAt(plan.ready, a) || b - a);
  for (const i of order) {
    const { run, after, station, clock = itemAt(stations, station).clock } = itemAt(operations, i);
    if (finish[i] === Infinity) continue;
    ready[i] = clock.latest(itemAt(finish, i), run);
    for (const part of after) finish[part] = Math.min(itemAt(finish, part), itemAt(ready, i));
    const previous = before.get(i);
    if (previous !== undefined)
      finish[previous] = Math.min(itemAt(finish, previous), clock.latest(itemAt(ready, i), itemAt(plan.setUp, i)));
  }
  return ready;
}

/** The operations that decide when this one is done, from the first: each begins when the one before it lets it. */
export function chainTo({ operations, stations }: FloorProblem, plan: FloorPlan, last: number): number[] {
  const before = previousOf(plan);
  const freed = freedBy({ operations, stations }, plan);
  // Runs (i) and set-ups (~i), the last first.
  const chain = new Set<number>();
  for (let at: number | undefined = last; at !== undefined && !chain.has(at); ) {
    chain.add(at);
    const isSetUp: boolean = at < 0;
    const i: number = isSetUp ? ~at : at;
    const { after, station } = itemAt(operations, i);
    const ready: number = itemAt(plan.ready, i);
    const begins: number = plan.begins?.[i] ?? ready;
    const previous: number | undefined = before.get(i);
    const setUp: number = isSetUp ? 0 : itemAt(plan.setUp, i);
    const { clock } = itemAt(stations, station);
    const holds: boolean =
      previous !== undefined && clock.finish(itemAt(plan.finish, previous), setUp) === (isSetUp ? begins : ready);
    const part: number | undefined = isSetUp ? undefined : after.find((each) => plan.finish[each] === ready);
    at = part ?? (holds ? previous : freed(i, isSetUp ? [begins] : [ready, begins]));
  }
  return [...new Set([...chain].reverse().map((code) => (code < 0 ? ~code : code)))];
}

/** With a crew: the run (i) or set-up (~i) whose end freed the people that an operation waited for; undefined where none did. */
function freedBy({ operations, stations }: Pick<FloorProblem, "operations" | "stations">, plan: FloorPlan) {
  const ends = new Map<number, number[]>();
  const add = (at: number, code: number) => ends.set(at, [...(ends.get(at) ?? []), code]);
  operations.forEach(({ station, people, clock }, i) => {
    const { machines, clock: usual } = itemAt(stations, station);
    if (!plan.list || people === 0 || machines === Infinity) return;
    add(itemAt(plan.finish, i), i);
    const setUp = itemAt(plan.setUp, i);
    const begins = plan.begins?.[i];
    if (setUp > 0 && begins !== undefined) add((clock ?? usual).finish(begins, setUp), ~i);
  });
  return (i: number, moments: readonly number[]): number | undefined =>
    moments.flatMap((at) => ends.get(at) ?? []).find((code) => code !== i && code !== ~i);
}

/** The operation before each on its machine. */
const previousOf = ({ machines }: FloorPlan): ReadonlyMap<number, number> =>
  new Map(machines.flatMap((own) => own.slice(1).map((i, place) => [i, itemAt(own, place)] as const)));
