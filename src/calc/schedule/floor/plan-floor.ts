import { boundOf } from "./bound.ts";
import { dispatched, inBestOrder } from "./dispatch.ts";
import { exactPlan, MOST_EXACT } from "./exact.ts";
import { leftShift } from "./left-shift.ts";
import { Floor, Orders } from "./orders.ts";
import { compareWorth, type FloorPlan, type FloorProblem, type Tried, type Worth } from "./problem.ts";
import { search } from "./search.ts";
import { staffedPlan } from "./staffed.ts";
import { Effort } from "./tabu.ts";

export interface FloorAnswer {
  readonly plan: FloorPlan;
  /** What no schedule betters: lateness and set-up. */
  readonly bound: Worth;
  /** No schedule is less late, and none as late has less set-up. */
  readonly isProved: boolean;
}

export interface FloorOptions {
  /** Work of the search, in operations looked at. 0: the first answer alone. */
  readonly units: number;
  /** Orders of machines to better, such as those of the plan before a change: never worse than they; with 0 units the best of them. */
  readonly tried?: readonly Tried[];
  /** For benchmarks: a clock that ends it. */
  readonly stop?: () => boolean;
}

// Chosen: work before a proof is tried, so that it begins with a good schedule, and work of the proof itself.
const BEFORE_PROOF = 2e6;
const PROOF = 4e7;

/** Fewest late hours by weight, then least set-up, then earliest. Pure: the same problem has the same plan everywhere. */
export function planFloor(problem: FloorProblem, options: FloorOptions): FloorAnswer {
  const { crew } = problem;
  if (!crew) return planMachines(problem, options);
  const { units, tried = [], stop } = options;
  // Without people counted first: what that proves is proved with them, and where it takes no more than there are it is the plan.
  const alone = planMachines(problem, { ...options, units: units / 2 });
  const isEnough = ({ late, setUp }: Worth): boolean =>
    alone.isProved ? late <= alone.plan.worth.late && setUp <= alone.plan.worth.setUp : false;
  const asked = { alone: alone.plan, tried, units: units / 2, stop, isEnough };
  const { plan, isProved } = staffedPlan(new Floor(problem), crew, asked);
  return { plan, bound: isProved ? { ...plan.worth, finishes: alone.bound.finishes } : alone.bound, isProved };
}

function planMachines(problem: FloorProblem, { units, tried = [], stop }: FloorOptions): FloorAnswer {
  const floor = new Floor(problem);
  const bound = boundOf(floor);
  const orders = new Orders(floor);
  const before = tried.flatMap(({ machines }) => {
    orders.follow(machines);
    return orders.evaluate() ? [orders.plan()] : [];
  });
  const first = before.length > 0 ? before : [dispatched(floor)];
  let best = first.reduce((a, b) => (compareWorth(b.worth, a.worth) < 0 ? b : a));
  const isEnough = ({ late, setUp }: Worth): boolean => late <= bound.late && setUp <= bound.setUp;
  const bettered = (most: number): FloorPlan => {
    const effort = new Effort(most, stop);
    if (!effort.isLeft) return best;
    orders.follow(best.machines);
    search(orders, effort, isEnough);
    return orders.plan();
  };
  const filled = (plan: FloorPlan): FloorPlan => {
    orders.follow(plan.machines);
    leftShift(orders);
    return orders.plan();
  };
  const canProve = floor.count <= MOST_EXACT && units > 0;
  if (canProve) {
    best = bettered(Math.min(BEFORE_PROOF, units / 10));
    const proof = new Effort(Math.min(PROOF, units / 2), stop);
    const exact = isEnough(best.worth) ? best : exactPlan(floor, best, proof);
    if (exact) return { plan: filled(exact), bound: { ...exact.worth, finishes: bound.finishes }, isProved: true };
  }
  if (units > 0 && problem.deliveries.length > 1 && !isEnough(best.worth))
    best = inBestOrder(floor, best, new Effort(units / 4, stop));
  best = bettered(canProve ? units / 2 : (units * 3) / 4);
  best = filled(best);
  return { plan: best, bound, isProved: isEnough(best.worth) };
}
