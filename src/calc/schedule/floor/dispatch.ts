import { missing } from "../../../units/certain.ts";
import { type Floor, Orders } from "./orders.ts";
import { compareWorth, type FloorPlan } from "./problem.ts";
import type { Effort } from "./tabu.ts";

/** Operations of the least figure go first; `setUp` says how many seconds of the figure a second of set-up counts. */
interface Priority {
  readonly figure: Float64Array;
  readonly setUp: number;
}

/** A schedule at once: every rule of priority is tried, and the best schedule is kept. */
export function dispatched(floor: Floor): FloorPlan {
  const rules = [...rulesOf(floor), ...[byDue(floor), byWork(floor)].map((order) => ranked(floor, order))];
  return rules.map((rule) => byPriority(floor, rule)).reduce((a, b) => (compareWorth(b.worth, a.worth) < 0 ? b : a));
}

/**
 * The same with the deliveries in the best order that is found by putting one of them to another place, as long as that
 * is better: where the floor is overloaded, which job goes first decides more than anything within a job.
 */
export function inBestOrder(floor: Floor, best: FloorPlan, effort: Effort): FloorPlan {
  let found = best;
  for (const start of [byDue(floor), byWork(floor)]) {
    let order = start;
    let own = byPriority(floor, ranked(floor, order));
    for (let isBetter = true; isBetter && effort.isLeft; ) {
      isBetter = false;
      for (let from = 0; from < order.length; from++)
        for (let to = 0; to < order.length && effort.isLeft; to++) {
          if (to === from) continue;
          const moved = order.toSpliced(from, 1).toSpliced(to, 0, order[from] ?? missing());
          effort.spend(PASSES * floor.count);
          const plan = byPriority(floor, ranked(floor, moved));
          if (compareWorth(plan.worth, own.worth) >= 0) continue;
          [order, own, isBetter] = [moved, plan, true];
        }
    }
    if (compareWorth(own.worth, found.worth) < 0) found = own;
  }
  return found;
}
const PASSES = 20; // operations looked at for each that is dispatched (measured)

const byDue = ({ problem: { deliveries } }: Floor): number[] =>
  deliveries
    .map((_, d) => d)
    .sort((a, b) => (deliveries[a] ?? missing()).due - (deliveries[b] ?? missing()).due || a - b);

/** Least work by weight first (Smith, Naval Research Logistics Quarterly 3, 1956; memory, unverified). */
function byWork(floor: Floor): number[] {
  const { deliveries } = floor.problem;
  const work = deliveries.map(() => 0);
  deliveryOf(floor).forEach((d, i) => {
    if (d >= 0 && (floor.machinesOf[i] ?? missing()) > 0) work[d]! += (floor.operations[i] ?? missing()).run;
  });
  return deliveries
    .map((_, d) => d)
    .sort(
      (a, b) =>
        (work[a] ?? missing()) / (deliveries[a] ?? missing()).weight -
          (work[b] ?? missing()) / (deliveries[b] ?? missing()).weight || a - b,
    );
}

/** The delivery that each operation belongs to, the one due first where they are several; -1 where none. */
export function deliveryOf({ count, problem: { deliveries }, next, nextAt }: Floor): Int32Array {
  const found = new Int32Array(count).fill(-1);
  const take = (i: number, d: number) => {
    if (
      d >= 0 &&
      ((found[i] ?? missing()) < 0 ||
        (deliveries[d] ?? missing()).due < (deliveries[found[i] ?? missing()] ?? missing()).due)
    )
      found[i] = d;
  };
  deliveries.forEach(({ operations }, d) => {
    for (const i of operations) take(i, d);
  });
  for (let i = count - 1; i >= 0; i--)
    for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++)
      take(i, found[next[k] ?? missing()] ?? missing());
  return found;
}

/** Delivery after delivery, in each the longest chain of work first. */
function ranked(floor: Floor, order: readonly number[]): Priority {
  const rank = new Map(order.map((d, at) => [d, at]));
  const chain = chains(floor);
  const longest = Math.max(1, ...chain);
  const own = deliveryOf(floor);
  return {
    figure: Float64Array.from(chain, (work, i) => (rank.get(own[i] ?? missing()) ?? order.length) * longest - work),
    setUp: 1,
  };
}

/** Longest chain of work from each operation on. */
function chains({ count, operations, next, nextAt, machinesOf }: Floor): Float64Array {
  const chain = new Float64Array(count);
  for (let i = count - 1; i >= 0; i--) {
    for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++)
      chain[i] = Math.max(chain[i] ?? missing(), chain[next[k] ?? missing()] ?? missing());
    if ((machinesOf[i] ?? missing()) > 0) chain[i] = (chain[i] ?? missing()) + (operations[i] ?? missing()).run;
  }
  return chain;
}

/** Most work left, and least slack with set-up counted once and eightfold (chosen): what shops and textbooks go by. */
function rulesOf(floor: Floor): Priority[] {
  const chain = chains(floor);
  const latest = latestBegins(floor);
  return [
    { figure: chain.map((work) => -work), setUp: 0 },
    { figure: latest, setUp: 1 },
    { figure: latest, setUp: 8 },
  ];
}

/** The due time less the work from the operation on. */
function latestBegins({ count, operations, problem, next, nextAt, clocks }: Floor): Float64Array {
  const latest = new Float64Array(count).fill(FAR);
  for (const { due, operations: last } of problem.deliveries)
    for (const i of last) latest[i] = Math.min(latest[i] ?? missing(), due);
  for (let i = count - 1; i >= 0; i--) {
    for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++)
      latest[i] = Math.min(latest[i] ?? missing(), latest[next[k] ?? missing()] ?? missing());
    if ((latest[i] ?? missing()) < FAR)
      latest[i] = (clocks[i] ?? missing()).latest(latest[i] ?? missing(), (operations[i] ?? missing()).run);
  }
  return latest;
}
const FAR = 1e15; // later than any date, and still a number to reckon with

/**
 * One operation after another on the station that could begin next: of those whose parts are there by then, the one of the
 * least figure (a schedule without delay; Baker, Introduction to Sequencing and Scheduling, 1974; memory, unverified).
 */
function byPriority(floor: Floor, { figure, setUp: weight }: Priority): FloorPlan {
  const { operations, count, clocks, firstMachine, machinesOf, next, nextAt, problem } = floor;
  const orders = new Orders(floor);
  const last = new Int32Array(floor.machines).fill(-1);
  const free = new Float64Array(floor.machines).fill(problem.start);
  const parts = Float64Array.from(operations, ({ release }) => release);
  const waits = Int32Array.from(operations, ({ after }) => after.length);
  const waiting = problem.stations.map((): number[] => []);
  const held = frozenQueues(floor);
  const opens = (i: number): void => {
    if ((machinesOf[i] ?? missing()) > 0) (waiting[(operations[i] ?? missing()).station] ?? missing()).push(i);
    else done(i, (clocks[i] ?? missing()).finish(parts[i] ?? missing(), (operations[i] ?? missing()).run));
  };
  const done = (i: number, at: number): void => {
    for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++) {
      const after = next[k] ?? missing();
      if (at > (parts[after] ?? missing())) parts[after] = at;
      if (--waits[after]! === 0) opens(after);
    }
  };
  for (let i = 0; i < count; i++) if ((operations[i] ?? missing()).after.length === 0) opens(i);
  for (let left = floor.machines > 0 ? count : 0; left > 0; left--) {
    // The station, its first free machine, and the moment at which work could begin there.
    let [station, machine, begin] = [-1, -1, Infinity];
    for (let s = 0; s < waiting.length; s++) {
      const own = waiting[s] ?? missing();
      const first =
        (held[s] ?? missing()).length > 0 ? heldUntil(own, (held[s] ?? missing())[0]!, parts) : soonest(own, parts);
      if (first === Infinity) continue;
      for (
        let m = firstMachine[own[0] ?? missing()] ?? missing(),
          end = m + (machinesOf[own[0] ?? missing()] ?? missing());
        m < end;
        m++
      )
        if (Math.max(first, free[m] ?? missing()) < begin)
          [station, machine, begin] = [s, m, Math.max(first, free[m] ?? missing())];
    }
    if (station < 0) break;
    const own = waiting[station] ?? missing();
    let i = (held[station] ?? missing()).shift() ?? -1;
    if (i < 0) {
      let least = Infinity;
      for (const each of own) {
        if ((parts[each] ?? missing()) > begin) continue;
        const value = (figure[each] ?? missing()) + weight * floor.setUp(last[machine] ?? missing(), each);
        if (i < 0 || value < least) [i, least] = [each, value];
      }
    }
    own.splice(own.indexOf(i), 1);
    const isSet = (clocks[i] ?? missing()).finish(
      free[machine] ?? missing(),
      floor.setUp(last[machine] ?? missing(), i),
    );
    const finish = (clocks[i] ?? missing()).finish(
      Math.max(isSet, parts[i] ?? missing()),
      (operations[i] ?? missing()).run,
    );
    orders.insert(i, machine, last[machine] ?? missing());
    last[machine] = i;
    free[machine] = finish;
    done(i, finish);
  }
  if (!orders.evaluate()) throw new Error("what is frozen waits for itself in a circle");
  return orders.plan();
}

/** When the first of these has its parts; Infinity where there is none. */
function soonest(operations: readonly number[], parts: Float64Array): number {
  let first = Infinity;
  for (const i of operations) if ((parts[i] ?? missing()) < first) first = parts[i] ?? missing();
  return first;
}

/** What has begun or is frozen comes before anything else of its station, in its own order. */
const heldUntil = (waiting: readonly number[], held: number, parts: Float64Array): number =>
  waiting.includes(held) ? (parts[held] ?? missing()) : Infinity;

/** By station what is frozen, in its order. */
function frozenQueues({ operations, problem }: Floor): number[][] {
  const queues = problem.stations.map((): number[] => []);
  operations.forEach(({ frozen, station }, i) => {
    if (frozen !== undefined) (queues[station] ?? missing()).push(i);
  });
  for (const queue of queues)
    queue.sort((a, b) => (operations[a] ?? missing()).frozen! - (operations[b] ?? missing()).frozen!);
  return queues;
}
