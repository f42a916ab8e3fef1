import type { Orders } from "./orders.ts";

const NONE = -1;
const MOST_PASSES = 20; // chosen: usually the second pass finds nothing

/**
 * Fills what stands idle: each operation, the first to begin first, goes to the earliest gap on a machine of its station in
 * which it begins sooner, nothing else begins later and no more is set up. What is left is an active schedule (Giffler and
 * Thompson, Operations Research 8, 1960; memory, unverified). Never leaves a worse one.
 */
export function leftShift(orders: Orders): void {
  const { floor, ready } = orders;
  orders.evaluate();
  const all = Array.from({ length: floor.count }, (_, i) => i).filter((i) => floor.machinesOf[i]! > 0);
  for (let pass = 0, isMoved = true; isMoved && pass < MOST_PASSES; pass++) {
    isMoved = false;
    for (const i of all.sort((a, b) => ready[a]! - ready[b]! || a - b)) {
      const gap = earlierGap(orders, i);
      if (!gap) continue;
      const [machine, before] = [orders.machine[i]!, orders.before[i]!];
      orders.unlink(i);
      orders.insert(i, gap.machine, gap.before);
      if (orders.evaluate()) isMoved = true;
      else {
        orders.unlink(i);
        orders.insert(i, machine, before);
        orders.evaluate();
      }
    }
  }
}

/** A place where the operation would begin sooner, and whoever comes behind it there or behind its old place no later. */
export function earlierGap(orders: Orders, i: number): { machine: number; before: number } | undefined {
  const { floor, before, behind, finish, ready, prepared, setUp } = orders;
  const { operations, clocks, problem } = floor;
  const { after, release, frozen, run } = operations[i]!;
  if (frozen !== undefined) return undefined;
  const parts = after.reduce((latest, part) => Math.max(latest, finish[part]!), release);
  if (parts >= ready[i]!) return undefined;
  const [was, next] = [before[i]!, behind[i]!];
  // What comes behind its old place must be set up in time without it.
  const freed = was === NONE ? problem.start : finish[was]!;
  const nextSetUp = next === NONE ? 0 : floor.setUp(was, next);
  if (next !== NONE && clocks[next]!.finish(freed, nextSetUp) > ready[next]!) return undefined;
  const saved = setUp[i]! + (next === NONE ? 0 : setUp[next]! - nextSetUp);
  const from = floor.firstMachine[i]!;
  let found: { machine: number; before: number; start: number } | undefined;
  for (let machine = from; machine < from + floor.machinesOf[i]!; machine++) {
    let previous = NONE;
    let later = orders.first[machine]!;
    for (;;) {
      const free = previous === NONE ? problem.start : finish[previous]!;
      if (free >= ready[i]!) break;
      const isFrozen = later !== NONE && operations[later]!.frozen !== undefined;
      if (!isFrozen && previous !== i && later !== i) {
        const own = floor.setUp(previous, i);
        const start = Math.max(clocks[i]!.finish(free, own), parts);
        const done = clocks[i]!.finish(start, run);
        const laterSetUp = later === NONE ? 0 : floor.setUp(i, later);
        const more = own + (later === NONE ? 0 : laterSetUp - setUp[later]!);
        const fits =
          later === NONE || clocks[later]!.finish(done, laterSetUp) <= Math.max(ready[later]!, prepared[later]!);
        if (fits && more <= saved && start < ready[i]! && start < (found?.start ?? Infinity))
          found = { machine, before: previous, start };
      }
      if (later === NONE) break;
      previous = later;
      later = behind[later]!;
    }
  }
  return found;
}
