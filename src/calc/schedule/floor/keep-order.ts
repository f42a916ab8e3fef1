import { itemAt } from "../../../units/certain.ts";
import type { Orders } from "./orders.ts";
import { compareWorth, type FloorPlan, type FloorProblem, type Worth } from "./problem.ts";
import { Effort } from "./tabu.ts";

const NONE = -1;

/** Late hours and set-up alone: what a plan before is given up for. */
export const isNoWorse = (a: Worth, b: Worth): boolean => a.late < b.late || (a.late === b.late && a.setUp <= b.setUp);

/**
 * The orders of a plan before, with what has to wait now put where the whole is best: what is pinned to later would hold up
 * all that stood behind it. Of places that cost as little the one that delays the fewest.
 * @param held when each run was to begin.
 */
export function repair(orders: Orders, held: readonly number[] | undefined): void {
  const { operations, problem, machinesOf } = orders.floor;
  operations.forEach(({ release, frozen }, i) => {
    if (release > problem.start && frozen === undefined && (machinesOf[i] ?? 0) > 0) placeBest(orders, i, held);
  });
}

function placeBest(orders: Orders, i: number, held: readonly number[] | undefined): void {
  const { floor, machine, before } = orders;
  const worth = (): Worth => {
    const delayed = held?.reduce((sum, at, k) => sum + ((orders.ready[k] ?? 0) > at ? 1 : 0), 0);
    return { ...orders.worth, finishes: delayed ?? orders.worth.finishes };
  };
  let best = { machine: machine[i] ?? NONE, before: before[i] ?? NONE, worth: worth() };
  orders.unlink(i);
  const first = floor.firstMachine[i] ?? NONE;
  for (let m = first; m < first + (floor.machinesOf[i] ?? 0); m++)
    for (let at = NONE, next = orders.first[m] ?? NONE; ; at = next, next = orders.behind[at] ?? NONE) {
      if (next === NONE || itemAt(floor.operations, next).frozen === undefined) {
        orders.insert(i, m, at);
        if (orders.evaluate() && compareWorth(worth(), best.worth) < 0)
          best = { machine: m, before: at, worth: worth() };
        orders.unlink(i);
      }
      if (next === NONE) break;
    }
  orders.insert(i, best.machine, best.before);
  orders.evaluate();
}

/** Goes back to the order of a plan before wherever that costs neither late hours nor set-up: first a machine at once, then one operation after the other. */
export function restoreOrder(orders: Orders, old: FloorPlan["machines"], effort: Effort): void {
  const { floor } = orders;
  orders.evaluate();
  const enough = orders.worth;
  const isKept = (change: () => void): void => {
    const saved = orders.save();
    change();
    effort.spend(floor.count);
    if (orders.evaluate() && isNoWorse(orders.worth, enough)) return;
    orders.restore(saved);
    orders.evaluate();
  };
  const put = (i: number, machine: number, behind: number): void => {
    orders.unlink(i);
    orders.insert(i, machine, behind);
  };
  const places = old.map((own, machine) =>
    own.map((i, at) => ({ i, machine, behind: at === 0 ? NONE : itemAt(own, at - 1) })),
  );
  for (const own of places)
    isKept(() => {
      for (const { i, machine, behind } of own) put(i, machine, behind);
    });
  for (let pass = 0; pass < PASSES; pass++)
    for (const { i, machine, behind } of places.flat()) {
      const isThere = orders.machine[i] === machine && orders.before[i] === behind;
      if (!effort.isLeft || isThere || (behind !== NONE && orders.machine[behind] !== machine)) continue;
      isKept(() => put(i, machine, behind));
    }
}
const PASSES = 3; // chosen: the second rarely finds much

/**
 * The plan with its runs held back to when they were to begin before wherever that costs neither late hours nor set-up: the
 * last ones first, so that what comes behind is held already; all at once, and where that fails by halves.
 * @param ready by operation; -Infinity where it was not planned before.
 */
export function heldBack(
  problem: FloorProblem,
  plan: FloorPlan,
  ready: readonly number[],
  work: (problem: FloorProblem, orders: FloorPlan) => FloorPlan | undefined,
): FloorPlan {
  const wanted = (i: number): number => itemAt(ready, i);
  let operations = [...problem.operations];
  let best = plan;
  const effort = new Effort(HELD);
  const hold = (some: readonly number[]): void => {
    if (some.length === 0 || !effort.isLeft) return;
    effort.spend(operations.length * (problem.crew ? LISTED : 1));
    const later = [...operations];
    for (const i of some) later[i] = { ...itemAt(later, i), release: wanted(i) };
    const found = work({ ...problem, operations: later }, plan);
    if (found && isNoWorse(found.worth, plan.worth)) {
      operations = later;
      best = found;
    } else if (some.length > 1) {
      const half = some.length >> 1;
      hold(some.slice(0, half));
      hold(some.slice(half));
    }
  };
  const early = operations.flatMap((_, i) => (itemAt(plan.ready, i) < wanted(i) ? [i] : []));
  hold(early.sort((a, b) => wanted(b) - wanted(a)));
  return best;
}

const HELD = 5e4; // chosen: operations looked at, some tens of milliseconds
const LISTED = 4; // how much longer it takes where people are counted (measured)
