import { itemAt, lastOf } from "../../../units/certain.ts";
import type { Floor } from "./orders.ts";
import type { Worth } from "./problem.ts";
import { type AtStation, lateAlone, stationBound, tailsOf } from "./station-bound.ts";

/** One operation on a machine of its own: from when, how long, and what must still follow it. */
interface Job {
  readonly head: number;
  readonly run: number;
  readonly tail: number;
}

/**
 * No order of these on one machine ends sooner: always the one of the longest tail among those that are there, which may
 * be interrupted (Jackson's preemptive schedule; Carlier, European Journal of Operational Research 11, 1982; memory,
 * unverified). By heads in order, a heap of tails.
 */
export function preemptiveBound(jobs: Job[]): number {
  const waiting = [...jobs].sort((a, b) => a.head - b.head);
  const open: { left: number; tail: number }[] = [];
  let at = -Infinity;
  let bound = -Infinity;
  let next = 0;
  while (next < waiting.length || open.length > 0) {
    if (open.length === 0) at = Math.max(at, itemAt(waiting, next).head);
    while (next < waiting.length && itemAt(waiting, next).head <= at) {
      const { run, tail, head } = itemAt(waiting, next++);
      bound = Math.max(bound, head + run + tail);
      let place = open.length;
      while (place > 0 && itemAt(open, place - 1).tail > tail) place--;
      open.splice(place, 0, { left: run, tail });
    }
    const first = lastOf(open);
    const until = next < waiting.length ? Math.min(at + first.left, itemAt(waiting, next).head) : at + first.left;
    first.left -= until - at;
    at = until;
    if (first.left > 0) continue;
    bound = Math.max(bound, at + first.tail);
    open.pop();
  }
  return bound;
}

/** From when each operation could begin with every machine to itself. */
export function earliestReady({ operations, clocks, next, nextAt, count }: Floor): Float64Array {
  const ready = Float64Array.from(operations, ({ release }) => release);
  for (let i = 0; i < count; i++) {
    const done = itemAt(clocks, i).finish(itemAt(ready, i), itemAt(operations, i).run);
    for (let k = itemAt(nextAt, i); k < itemAt(nextAt, i + 1); k++)
      ready[itemAt(next, k)] = Math.max(itemAt(ready, itemAt(next, k)), done);
  }
  return ready;
}

/**
 * What no schedule betters: every delivery alone, and at the station that says most all of them together. Alone: its longest chain of work with every machine to itself, and on each
 * station of one machine its own operations in the best order. That order is exact in a clock that never stops; in shifts
 * a tail in working time is not one in instants, so there all of a station's work is laid behind its earliest head.
 */
export function boundOf(floor: Floor): Worth {
  const { problem, operations, clocks, isSteady } = floor;
  const ready = earliestReady(floor);
  let [late, finishes] = [0, 0];
  const byStation = new Map<number, AtStation[]>();
  for (const { due, weight, operations: last } of problem.deliveries) {
    const members = membersOf(floor, last);
    const done = (i: number) => itemAt(clocks, i).finish(itemAt(ready, i), itemAt(operations, i).run);
    let least = Math.max(...last.map(done));
    const tails = isSteady ? steadyTails(floor, last) : undefined;
    const stations = stationsOf(floor, members);
    for (const [station, own] of stations) {
      const { machines, clock } = itemAt(problem.stations, station);
      if (tails && machines === 1)
        least = Math.max(
          least,
          preemptiveBound(
            own.map((i) => ({ head: itemAt(ready, i), run: itemAt(operations, i).run, tail: itemAt(tails, i) })),
          ),
        );
      const work = own.reduce((sum, i) => sum + itemAt(operations, i).run, 0) / machines;
      least = Math.max(least, clock.finish(Math.min(...own.map((i) => itemAt(ready, i))), work));
    }
    late += lateAlone({ weight, due, least });
    finishes += weight * least;
    for (const [station, own] of stations)
      byStation.set(station, [
        ...(byStation.get(station) ?? []),
        { weight, due, least, operations: own, tails: tailsOf(floor, own, new Set(members)) },
      ]);
  }
  const more = [...byStation].map(([station, own]) =>
    own.length < 2 ? 0 : stationBound(floor, station, own, ready) - own.reduce((sum, each) => sum + lateAlone(each), 0),
  );
  return { late: late + Math.max(0, ...more), setUp: leastSetUp(floor), finishes };
}

/** Every lot is set up once, and every key of a station once: at least by the shortest that any of its operations takes. */
function leastSetUp({ operations }: Floor): number {
  const seen = new Map<string, number>();
  const once = (name: string, time: number) => seen.set(name, Math.min(time, seen.get(name) ?? Infinity));
  for (const { station, lot, own, key, change } of operations) {
    once(`lot ${station} ${lot}`, own);
    once(`key ${station} ${key}`, change);
  }
  return [...seen.values()].reduce((sum, time) => sum + time, 0);
}

/** Operations that must be done before one of these is, and these. */
function membersOf({ operations }: Floor, last: readonly number[]): number[] {
  const found = new Set<number>();
  const open = [...last];
  while (open.length > 0) {
    const i = open.pop()!;
    if (found.has(i)) continue;
    found.add(i);
    open.push(...itemAt(operations, i).after);
  }
  return [...found];
}

function stationsOf({ operations, machinesOf }: Floor, members: readonly number[]): Map<number, number[]> {
  const found = new Map<number, number[]>();
  for (const i of members) {
    if (machinesOf[i] === 0) continue;
    const { station } = itemAt(operations, i);
    found.set(station, [...(found.get(station) ?? []), i]);
  }
  return found;
}

/** Work that follows each operation on the way to these; below 0 where it is not on the way. */
export function steadyTails({ operations, next, nextAt, count }: Floor, last: readonly number[]): Float64Array {
  const tail = new Float64Array(count).fill(-Infinity);
  for (const i of last) tail[i] = 0;
  for (let i = count - 1; i >= 0; i--)
    for (let k = itemAt(nextAt, i); k < itemAt(nextAt, i + 1); k++)
      tail[i] = Math.max(itemAt(tail, i), itemAt(tail, itemAt(next, k)) + itemAt(operations, itemAt(next, k)).run);
  return tail;
}
