import { itemAt } from "../../../units/certain.ts";
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
  const all = Array.from({ length: floor.count }, (_, i) => i).filter((i) => itemAt(floor.machinesOf, i) > 0);
  for (let pass = 0, isMoved = true; isMoved && pass < MOST_PASSES; pass++) {
    isMoved = false;
    for (const i of all.sort((a, b) => itemAt(ready, a) - itemAt(ready, b) || a - b)) {
      const gap = earlierGap(orders, i);
      if (!gap) continue;
      const [machine, before] = [itemAt(orders.machine, i), itemAt(orders.before, i)];
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
  const { after, release, frozen, run } = itemAt(operations, i);
  if (frozen !== undefined) return undefined;
  const parts = after.reduce((latest, part) => Math.max(latest, itemAt(finish, part)), release);
  if (parts >= itemAt(ready, i)) return undefined;
  const [was, next] = [itemAt(before, i), itemAt(behind, i)];
  // What comes behind its old place must be set up in time without it.
  const freed = was === NONE ? problem.start : itemAt(finish, was);
  const nextSetUp = next === NONE ? 0 : floor.setUp(was, next);
  if (next !== NONE && itemAt(clocks, next).finish(freed, nextSetUp) > itemAt(ready, next)) return undefined;
  const saved = itemAt(setUp, i) + (next === NONE ? 0 : itemAt(setUp, next) - nextSetUp);
  const from = itemAt(floor.firstMachine, i);
  let found: { machine: number; before: number; start: number } | undefined;
  for (let machine = from; machine < from + itemAt(floor.machinesOf, i); machine++) {
    let previous = NONE;
    let later = itemAt(orders.first, machine);
    for (;;) {
      const free = previous === NONE ? problem.start : itemAt(finish, previous);
      if (free >= itemAt(ready, i)) break;
      const isFrozen = later !== NONE && itemAt(operations, later).frozen !== undefined;
      if (!isFrozen && previous !== i && later !== i) {
        const own = floor.setUp(previous, i);
        const start = Math.max(itemAt(clocks, i).finish(free, own), parts);
        const done = itemAt(clocks, i).finish(start, run);
        const laterSetUp = later === NONE ? 0 : floor.setUp(i, later);
        const more = own + (later === NONE ? 0 : laterSetUp - itemAt(setUp, later));
        const fits =
          later === NONE ||
          itemAt(clocks, later).finish(done, laterSetUp) <= Math.max(itemAt(ready, later), itemAt(prepared, later));
        if (fits && more <= saved && start < itemAt(ready, i) && start < (found?.start ?? Infinity))
          found = { machine, before: previous, start };
      }
      if (later === NONE) break;
      previous = later;
      later = itemAt(behind, later);
    }
  }
  return found;
}
