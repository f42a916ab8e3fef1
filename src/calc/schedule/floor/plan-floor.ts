import { boundOf } from "./bound.ts";
import { dispatched, inBestOrder } from "./dispatch.ts";
import { exactPlan, MOST_EXACT } from "./exact.ts";
import { heldBack, isNoWorse, repair, restoreOrder } from "./keep-order.ts";
import { leftShift } from "./left-shift.ts";
import { Floor, Orders } from "./orders.ts";
import { type CrewSpan, compareWorth, type FloorPlan, type FloorProblem, type Tried, type Worth } from "./problem.ts";
import { search } from "./search.ts";
import { staffedPlan, workedOut } from "./staffed.ts";
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
  /** The first of those tried is kept as far as that costs neither late hours nor set-up: of a changed plan as little as can be moves. */
  readonly isKept?: boolean | undefined;
  /** When each operation's run was to begin before, or -Infinity: none is sooner where that would better neither. */
  readonly held?: readonly number[] | undefined;
  /** For benchmarks: a clock that ends it. */
  readonly stop?: () => boolean;
}

// Chosen: work before a proof is tried, so that it begins with a good schedule, and work of the proof itself.
const BEFORE_PROOF = 2e6;
const PROOF = 4e7;
// Chosen: work for each operation of being done earlier.
const EARLIER = 1e4;
// Chosen: work of going back to an order before.
const RESTORED = 5e5;

/** Fewest late hours by weight, then least set-up, then earliest. Pure: the same problem has the same plan everywhere. */
export function planFloor(problem: FloorProblem, options: FloorOptions): FloorAnswer {
  const answer = problem.crew ? planCrew(problem, problem.crew, options) : planMachines(problem, options);
  const { held } = options;
  return held ? { ...answer, plan: heldBack(problem, answer.plan, held, worked) } : answer;
}

function worked(problem: FloorProblem, plan: FloorPlan): FloorPlan | undefined {
  const floor = new Floor(problem);
  if (problem.crew) return workedOut(floor, problem.crew, plan);
  const orders = new Orders(floor);
  orders.follow(plan.machines);
  return orders.evaluate() ? orders.plan() : undefined;
}

function planCrew(problem: FloorProblem, crew: () => Iterator<CrewSpan>, options: FloorOptions): FloorAnswer {
  const { units, tried = [], stop, isKept } = options;
  // Without people counted first: what that proves is proved with them, and where it takes no more than there are it is the plan.
  const alone = planMachines(problem, { ...options, units: units / 2 });
  const isEnough = ({ late, setUp }: Worth): boolean =>
    alone.isProved ? late <= alone.plan.worth.late && setUp <= alone.plan.worth.setUp : false;
  const asked = { alone: alone.plan, tried, units: units / 2, stop, isKept, isEnough };
  const { plan, isProved } = staffedPlan(new Floor(problem), crew, asked);
  return { plan, bound: isProved ? { ...plan.worth, finishes: alone.bound.finishes } : alone.bound, isProved };
}

function planMachines(problem: FloorProblem, options: FloorOptions): FloorAnswer {
  const { units, tried = [], stop, isKept = false } = options;
  const floor = new Floor(problem);
  const bound = boundOf(floor);
  const orders = new Orders(floor);
  const before = tried.flatMap(({ machines }, i) => {
    orders.follow(machines);
    if (!orders.evaluate()) return [];
    if (isKept && i === 0) repair(orders, options.held);
    return [orders.plan()];
  });
  const first = before.length > 0 ? before : [dispatched(floor)];
  let best = first.reduce((a, b) => (compareWorth(b.worth, a.worth) < 0 ? b : a));
  const isEnough = ({ late, setUp }: Worth): boolean => late <= bound.late && setUp <= bound.setUp;
  const bettered = (most: number, isDone = isEnough): FloorPlan => {
    const effort = new Effort(most, stop);
    if (!effort.isLeft) return best;
    orders.follow(best.machines);
    search(orders, effort, isDone);
    return orders.plan();
  };
  // Where no plan has less late hours and set-up, one that is done earlier is looked for a little longer.
  const earlier = (): FloorPlan => {
    const isSettled = (worth: Worth): boolean => isEnough(worth) && worth.finishes <= bound.finishes;
    return bettered(Math.min(units / 8, EARLIER * floor.count), isSettled);
  };
  const [kept] = isKept ? before : [];
  const filled = (plan: FloorPlan): FloorPlan => {
    orders.follow(plan.machines);
    leftShift(orders);
    if (kept && isNoWorse(kept.worth, orders.worth)) return kept;
    if (kept) restoreOrder(orders, kept.machines, new Effort(RESTORED, stop));
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
  if (isEnough(best.worth)) best = earlier();
  best = filled(best);
  return { plan: best, bound, isProved: isEnough(best.worth) };
}
