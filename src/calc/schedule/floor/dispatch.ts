import { type Floor, Orders } from "./orders.ts";
import { compareWorth, type FloorPlan } from "./problem.ts";

/** Which of the operations that could be next on a machine is taken: the one of the least figure. */
interface Choice {
  readonly operation: number;
  readonly start: number;
  readonly setUp: number;
}
type Rule = (choice: Choice, facts: Facts) => number;

interface Facts {
  /** The due time less the work that is still behind the operation: the latest it could begin. */
  readonly latest: Float64Array;
  readonly weight: Float64Array;
  /** Longest chain of work from the operation on. */
  readonly chain: Float64Array;
}

/**
 * Rules of priority that shops and textbooks use: least slack, the same with what it saves of a set-up, the most work
 * left, earliest by weight (Panwalkar and Iskander, Operations Research 25, 1977; memory, unverified).
 */
const RULES: readonly Rule[] = [
  ({ operation }, { latest }) => latest[operation]!,
  ({ operation, setUp }, { latest }) => latest[operation]! + SET_UP_WEIGHT * setUp,
  ({ operation }, { chain }) => -chain[operation]!,
  ({ operation, start, setUp }, { latest, weight }) => (latest[operation]! - start + setUp) / weight[operation]!,
  ({ start, setUp }) => start + setUp,
];
const SET_UP_WEIGHT = 8; // chosen: an hour of set-up saved is worth eight of slack

/** A schedule at once: by each rule the next operation is taken wherever it can finish first; the best rule's is kept. */
export function dispatched(floor: Floor): FloorPlan {
  const facts = factsOf(floor);
  return RULES.map((rule) => byRule(floor, rule, facts)).reduce((a, b) => (compareWorth(b.worth, a.worth) < 0 ? b : a));
}

function factsOf({ count, operations, problem, next, nextAt, clocks }: Floor): Facts {
  const latest = new Float64Array(count).fill(Infinity);
  const weight = new Float64Array(count);
  const chain = new Float64Array(count);
  for (const { due, weight: own, operations: last } of problem.deliveries) {
    for (const operation of last) {
      latest[operation] = Math.min(latest[operation]!, due);
      weight[operation] = Math.max(weight[operation]!, own);
    }
  }
  for (let i = count - 1; i >= 0; i--) {
    for (let k = nextAt[i]!; k < nextAt[i + 1]!; k++) {
      const after = next[k]!;
      latest[i] = Math.min(latest[i]!, latest[after]!);
      weight[i] = Math.max(weight[i]!, weight[after]!);
      chain[i] = Math.max(chain[i]!, chain[after]!);
    }
    const { run } = operations[i]!;
    chain[i] = chain[i]! + run;
    if (latest[i]! < Infinity) latest[i] = clocks[i]!.latest(latest[i]!, run);
    if (weight[i] === 0) weight[i] = 1;
  }
  return { latest, weight, chain };
}

/**
 * Of all operations whose parts are there, that one's machine is looked at which could finish first; of those that could
 * begin there before then, the rule takes one (Giffler and Thompson, Operations Research 8, 1960; memory, unverified).
 */
function byRule(floor: Floor, rule: Rule, facts: Facts): FloorPlan {
  const { operations, count, clocks, firstMachine, machinesOf, next, nextAt, machines } = floor;
  const orders = new Orders(floor);
  const last = new Int32Array(machines).fill(-1);
  const free = new Float64Array(machines).fill(floor.problem.start);
  const parts = Float64Array.from(operations, ({ release }) => release);
  const waits = Int32Array.from(operations, ({ after }) => after.length);
  const frozen = frozenQueues(floor);
  const open: number[] = [];
  const opens = (operation: number) => {
    if (firstMachine[operation]! >= 0) open.push(operation);
    else done(operation, clocks[operation]!.finish(parts[operation]!, operations[operation]!.run));
  };
  const done = (operation: number, at: number) => {
    for (let k = nextAt[operation]!; k < nextAt[operation + 1]!; k++) {
      const after = next[k]!;
      parts[after] = Math.max(parts[after]!, at);
      if (--waits[after]! === 0) opens(after);
    }
  };
  for (let i = 0; i < count; i++) if (operations[i]!.after.length === 0) opens(i);
  // What has begun comes before anything else of its station, in its own order.
  const isHeld = (operation: number): boolean => {
    const queue = frozen.get(operations[operation]!.station);
    return queue !== undefined && queue.length > 0 && queue[0] !== operation;
  };
  while (open.length > 0) {
    let first: (Choice & { readonly machine: number; readonly finish: number }) | undefined;
    const choices: (Choice & { readonly machine: number })[] = [];
    const takeable = open.filter((operation) => !isHeld(operation));
    for (const operation of takeable.length > 0 ? takeable : open) {
      let own: typeof first;
      for (let m = firstMachine[operation]!; m < firstMachine[operation]! + machinesOf[operation]!; m++) {
        const setUp = floor.setUp(last[m]!, operation);
        const start = Math.max(clocks[operation]!.finish(free[m]!, setUp), parts[operation]!);
        const finish = clocks[operation]!.finish(start, operations[operation]!.run);
        if (!own || finish < own.finish) own = { operation, machine: m, start, setUp, finish };
      }
      choices.push(own!);
      if (!first || own!.finish < first.finish) first = own;
    }
    const { machine, finish } = first!;
    let best: (typeof choices)[number] | undefined;
    let least = Infinity;
    for (const choice of choices) {
      if (choice.machine !== machine || (choice.start >= finish && choice.operation !== first!.operation)) continue;
      const figure = rule(choice, facts);
      if (best && figure >= least) continue;
      best = choice;
      least = figure;
    }
    const { operation, start } = best!;
    orders.insert(operation, machine, last[machine]!);
    last[machine] = operation;
    free[machine] = clocks[operation]!.finish(start, operations[operation]!.run);
    remove(open, operation);
    if (operations[operation]!.frozen !== undefined) remove(frozen.get(operations[operation]!.station)!, operation);
    done(operation, free[machine]!);
  }
  orders.evaluate();
  return orders.plan();
}

const remove = (list: number[], operation: number) => list.splice(list.indexOf(operation), 1);

/** By station what is frozen, in its order. */
function frozenQueues({ operations }: Floor): Map<number, number[]> {
  const queues = new Map<number, number[]>();
  operations.forEach(({ frozen, station }, i) => {
    if (frozen !== undefined) queues.set(station, [...(queues.get(station) ?? []), i]);
  });
  for (const queue of queues.values()) queue.sort((a, b) => operations[a]!.frozen! - operations[b]!.frozen!);
  return queues;
}
