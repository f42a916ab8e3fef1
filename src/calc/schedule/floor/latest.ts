import type { FloorPlan, FloorProblem, Operation } from "./problem.ts";

/**
 * By operation the latest its run may begin, in the order as it is planned, so that every delivery behind it still leaves
 * when it is due; Infinity where none behind it has a date. Worked back from the due times (critical path method; Kelley
 * and Walker, Eastern Joint Computer Conference 1959; memory, unverified).
 */
export function latestReady({ operations, stations, deliveries }: FloorProblem, plan: FloorPlan): number[] {
  const finish = operations.map(() => Infinity);
  const ready = operations.map(() => Infinity);
  for (const { due, operations: last } of deliveries) for (const i of last) finish[i] = Math.min(finish[i]!, due);
  const before = previousOf(plan);
  // What follows another operation is ready no sooner than it, and in the order of the problem behind its parts.
  const order = operations.map((_, i) => i).sort((a, b) => plan.ready[b]! - plan.ready[a]! || b - a);
  for (const i of order) {
    const { run, after, station } = operations[i]!;
    const { clock } = stations[station]!;
    if (finish[i] === Infinity) continue;
    ready[i] = clock.latest(finish[i]!, run);
    for (const part of after) finish[part] = Math.min(finish[part]!, ready[i]!);
    const previous = before.get(i);
    if (previous !== undefined) finish[previous] = Math.min(finish[previous]!, clock.latest(ready[i]!, plan.setUp[i]!));
  }
  return ready;
}

/** The operations that decide when this one is done, from the first: each begins when the one before it lets it. */
export function chainTo({ operations, stations }: FloorProblem, plan: FloorPlan, last: number): number[] {
  const before = previousOf(plan);
  const chain: number[] = [];
  for (let at: number | undefined = last; at !== undefined; ) {
    chain.push(at);
    const { after, station }: Operation = operations[at]!;
    const ready: number = plan.ready[at]!;
    const setUp: number = plan.setUp[at]!;
    const previous: number | undefined = before.get(at);
    const part: number | undefined = after.find((each) => plan.finish[each] === ready);
    const holds: boolean =
      previous !== undefined && stations[station]!.clock.finish(plan.finish[previous]!, setUp) === ready;
    at = part ?? (holds ? previous : undefined);
  }
  return chain.reverse();
}

/** The operation before each on its machine. */
const previousOf = ({ machines }: FloorPlan): ReadonlyMap<number, number> =>
  new Map(machines.flatMap((own) => own.slice(1).map((i, place) => [i, own[place]!] as const)));
