/** The floor with people that are counted: who works at one station stands at no other. */
import { itemAt } from "../../../units/certain.ts";
import { Random } from "../../cutting/random.ts";
import { deliveryOf, dispatched } from "./dispatch.ts";
import { isNoWorse } from "./keep-order.ts";
import { latestReady } from "./latest.ts";
import { type List, type Listed, Listing } from "./listing.ts";
import { type Floor, Orders } from "./orders.ts";
import { type CrewSpan, compareWorth, type FloorPlan, type Tried, type Worth } from "./problem.ts";
import { StaffedExact } from "./staffed-exact.ts";
import { Effort } from "./tabu.ts";

const NONE = -1;
const SEED = 1;
const LISTED = 20; // operations looked at for each that is listed (measured)
const MOST_EXACT = 9; // operations; beyond that nothing is proved in a time that anybody waits (chosen)
const NEAR = 0.5; // chosen: moves to the very next places, the others anywhere

interface Asked {
  /** What no schedule betters, people or not, and the plan without them. */
  readonly alone: FloorPlan;
  readonly tried: readonly Tried[];
  readonly units: number;
  readonly stop: (() => boolean) | undefined;
  readonly isKept: boolean | undefined;
  /** The late hours and set-up at which nothing is left to better. */
  readonly isEnough: (worth: Worth) => boolean;
}

/** The best schedule found in which nobody stands at two stations; proved where all of them were looked at. */
export function staffedPlan(floor: Floor, crew: () => Iterator<CrewSpan>, asked: Asked) {
  const { alone, tried, units, stop, isKept, isEnough } = asked;
  const canProve = floor.count <= MOST_EXACT;
  const effort = new Effort(canProve ? units / 10 : units, stop);
  const listing = new Listing(floor, crew);
  const worthOf = (listed: Listed): Worth => {
    effort.spend(LISTED * floor.count);
    return listing.work(listed);
  };
  // Two plans without people to go by: one that was searched for keeps set-ups together, one made at once keeps jobs together.
  const guides = effort.isLeft ? [alone, dispatched(floor)] : tried.length === 0 ? [alone] : [];
  const old = tried.map(({ machines, list }) => ({
    list: inOrder(floor, list ? rankOf(floor, list) : firstRanks(floor, machines)),
    machine: machinesIn(floor, machines),
  }));
  const [first] = old;
  const kept = isKept && first ? repaired(floor, { ...first, worth: worthOf(first) }, worthOf) : undefined;
  let best = bestOf([...(kept ? [kept] : []), ...old, ...guides.flatMap((guide) => starts(floor, guide))], worthOf);
  const isDone = () => isEnough(best.worth) || !effort.isLeft;
  for (const guide of guides)
    if (!isDone()) best = byDelivery(floor, best, { guide, worthOf, isDone: () => !effort.isLeft });
  if (!isDone()) best = improved(floor, best, worthOf, effort, isEnough);
  let isProved = isEnough(best.worth);
  if (!isProved && canProve && units > 0) {
    const exact = new StaffedExact(floor, crew, best.worth, new Effort(units, stop));
    isProved = exact.look();
    if (exact.best) best = { ...exact.best, worth: listing.work(exact.best) };
  }
  if (kept && isNoWorse(kept.worth, best.worth)) best = kept;
  return { plan: listing.plan(listing.settled(best)), isProved };
}

/** The runs and set-ups of a plan worked out anew in another floor of the same operations; undefined where it has no list. */
export function workedOut(floor: Floor, crew: () => Iterator<CrewSpan>, { list, machines }: FloorPlan): FloorPlan {
  const listing = new Listing(floor, crew);
  const listed = { list: list ?? inOrder(floor, firstRanks(floor, machines)), machine: machinesIn(floor, machines) };
  listing.work(listed);
  return listing.plan(listed);
}

/** What has to wait now stands where the whole is best: behind what was to come after it. */
function repaired(floor: Floor, start: Found, worthOf: (listed: Listed) => Worth): Found {
  const { operations, problem, next, nextAt } = floor;
  let best = start;
  operations.forEach(({ release, frozen }, i) => {
    if (release <= problem.start || frozen !== undefined || floor.machinesOf[i] === 0) return;
    const rest = best.list.filter((code) => code !== i && code !== ~i);
    const after = new Set(next.slice(nextAt[i], nextAt[i + 1]));
    const end = rest.findIndex((code) => after.has(code));
    const [from, to] = [best.list.indexOf(i), end < 0 ? rest.length : end];
    const stride = Math.max(1, Math.ceil((to - from) / MOST_PLACES));
    for (let at = from; at <= to; at += stride) {
      const moved = { list: rest.toSpliced(at, 0, ...(floor.hasSetUps ? [~i] : []), i), machine: best.machine };
      const worth = worthOf(moved);
      if (compareWorth(worth, best.worth) < 0) best = { ...moved, worth };
    }
  });
  return best;
}
const MOST_PLACES = 50; // chosen

interface Found extends Listed {
  readonly worth: Worth;
}

const bestOf = (given: readonly Listed[], worthOf: (listed: Listed) => Worth): Found =>
  given
    .map((each) => ({ ...each, worth: worthOf(each) }))
    .reduce((a, b) => (compareWorth(b.worth, a.worth) < 0 ? b : a));

const machinesIn = (floor: Floor, machines: FloorPlan["machines"]): Int32Array => {
  const found = new Int32Array(floor.count).fill(NONE);
  machines.forEach((own, m) => {
    for (const i of own) found[i] = m;
  });
  return found;
};

/** Ranks by which a list is made: of runs, and of set-ups before them. */
interface Ranks {
  readonly run: Float64Array;
  readonly setUp: Float64Array;
}

const ranks = (run: Float64Array, setUp = run): Ranks => ({ run, setUp });

function rankOf(floor: Floor, list: List): Ranks {
  const found = ranks(new Float64Array(floor.count).fill(Infinity), new Float64Array(floor.count).fill(Infinity));
  list.forEach((code, at) => {
    (code < 0 ? found.setUp : found.run)[code < 0 ? ~code : code] = at;
  });
  return found;
}

/** Orders of machines without people, by when their runs would begin. */
function firstRanks(floor: Floor, machines: FloorPlan["machines"]): Ranks {
  const orders = new Orders(floor);
  orders.follow(machines);
  return orders.evaluate() ? ranks(orders.ready.slice()) : ranks(Float64Array.from(floor.release));
}

/** By rank, each run behind those it waits for, what is frozen before all else of its station. */
function inOrder(floor: Floor, { run, setUp }: Ranks): List {
  const { operations, count } = floor;
  const frozen = Float64Array.from(operations, (each) => each.frozen ?? Infinity);
  for (let i = count - 1; i >= 0; i--)
    for (const part of itemAt(operations, i).after) frozen[part] = Math.min(itemAt(frozen, part), itemAt(frozen, i));
  const held = (i: number): number => itemAt(frozen, i);
  const rank = Float64Array.from(run);
  for (let i = 0; i < count; i++)
    for (const part of itemAt(operations, i).after)
      if (itemAt(rank, part) > itemAt(rank, i)) rank[i] = itemAt(rank, part);
  const codes = operations.flatMap((_, i) => (floor.machinesOf[i] === 0 || !floor.hasSetUps ? [i] : [~i, i]));
  const own = (code: number) => (code < 0 ? ~code : code);
  const figure = (code: number) =>
    code < 0 ? Math.min(itemAt(setUp, own(code)), itemAt(rank, own(code))) : itemAt(rank, code);
  return codes.sort((a, b) => held(own(a)) - held(own(b)) || figure(a) - figure(b) || own(a) - own(b) || a - b);
}

/** Lists to begin with: as the plan without people begins, by what must begin first, and delivery after delivery. */
function starts(floor: Floor, alone: FloorPlan): Listed[] {
  const machine = machinesIn(floor, alone.machines);
  const latest = latestReady(floor.problem, alone).map((at) => Math.min(at, FAR));
  const all = [
    ranks(Float64Array.from(alone.ready)),
    ranks(Float64Array.from(latest)),
    inTurn(floor, alone, byDue(floor), deliveryOf(floor)),
  ];
  return all.map((each) => ({ list: inOrder(floor, each), machine }));
}
const FAR = 1e15; // later than any date, and still a number to reckon with

const byDue = ({ problem: { deliveries } }: Floor): number[] =>
  deliveries.map((_, d) => d).sort((a, b) => itemAt(deliveries, a).due - itemAt(deliveries, b).due || a - b);

/** Delivery after delivery, within each as the plan without people begins. */
function inTurn(floor: Floor, alone: FloorPlan, order: readonly number[], own: Int32Array): Ranks {
  const place = new Map(order.map((d, at) => [d, at]));
  const span = Math.max(...alone.finish) - floor.problem.start + 1;
  const turn = (i: number) => place.get(own[i] ?? NONE) ?? order.length;
  return ranks(Float64Array.from(alone.ready, (at, i) => turn(i) * span + at - floor.problem.start));
}

interface Way {
  /** A plan without people, by which each delivery's own work is listed. */
  readonly guide: FloorPlan;
  readonly worthOf: (listed: Listed) => Worth;
  readonly isDone: () => boolean;
}

/** Where people are short, which delivery has them first decides most: one of them is put to another place as long as that is better. */
function byDelivery(floor: Floor, best: Found, { guide, worthOf, isDone }: Way): Found {
  const machine = machinesIn(floor, guide.machines);
  const own = deliveryOf(floor);
  const listed = (given: readonly number[]): Found => {
    const tried = { list: inOrder(floor, inTurn(floor, guide, given, own)), machine };
    return { ...tried, worth: worthOf(tried) };
  };
  let order = byDue(floor);
  let found = listed(order);
  for (let isBetter = true; isBetter && !isDone(); ) {
    isBetter = false;
    for (let from = 0; from < order.length; from++)
      for (let to = 0; to < order.length && !isDone(); to++) {
        if (to === from) continue;
        const moved = order.toSpliced(from, 1).toSpliced(to, 0, itemAt(order, from));
        const next = listed(moved);
        if (compareWorth(next.worth, found.worth) >= 0) continue;
        [order, found, isBetter] = [moved, next, true];
      }
  }
  return compareWorth(found.worth, best.worth) < 0 ? found : best;
}

/** One operation after the other, drawn by chance, is put to another place of the list or on another machine; kept where nothing is worse. */
function improved(
  floor: Floor,
  start: Found,
  worthOf: (listed: Listed) => Worth,
  effort: Effort,
  isEnough: (worth: Worth) => boolean,
): Found {
  const random = new Random(SEED);
  const free = floor.operations.flatMap(({ frozen }, i) => (frozen === undefined ? [i] : []));
  let best = start;
  while (free.length > 0 && effort.isLeft && !isEnough(best.worth)) {
    const moved = (random.below(3) === 0 ? lineTo : movedTo)(
      floor,
      best,
      itemAt(free, random.below(free.length)),
      random,
    );
    if (!moved) {
      effort.spend(floor.count);
      continue;
    }
    const worth = worthOf(moved);
    if (compareWorth(worth, best.worth) <= 0) best = { ...moved, worth };
  }
  return best;
}

function movedTo(
  { operations, firstMachine, machinesOf, next, nextAt, count }: Floor,
  best: Found,
  i: number,
  random: Random,
): Listed | undefined {
  const { station, after } = itemAt(operations, i);
  const rest = best.list.filter((code) => code !== i && code !== ~i);
  const at = new Int32Array(count);
  let low = 0;
  rest.forEach((code, place) => {
    if (code < 0) return;
    at[code] = place;
    if (itemAt(operations, code).frozen !== undefined && itemAt(operations, code).station === station) low = place + 1;
  });
  for (const part of after) low = Math.max(low, itemAt(at, part) + 1);
  let high = rest.length;
  for (let k = itemAt(nextAt, i); k < itemAt(nextAt, i + 1); k++) high = Math.min(high, itemAt(at, itemAt(next, k)));
  if (high < low) return undefined;
  const was = best.list.indexOf(i);
  const isNear = random.unit() < NEAR;
  const [from, to] = isNear ? [Math.max(low, was - FEW), Math.min(high, was + FEW)] : [low, high];
  const place = to < from ? low : from + random.below(to - from + 1);
  const hasSetUp = best.list.length > rest.length + 1;
  // Mostly set up when it is due; some earlier, while people have nothing better to do.
  const setAt = random.below(4) === 0 ? random.below(place + 1) : place;
  const list = hasSetUp
    ? [...rest.slice(0, setAt), ~i, ...rest.slice(setAt, place), i, ...rest.slice(place)]
    : rest.toSpliced(place, 0, i);
  const own = itemAt(machinesOf, i);
  if (own < 2 || random.below(2) === 0) return { list, machine: best.machine };
  const machine = best.machine.slice();
  machine[i] = itemAt(firstMachine, i) + random.below(own);
  return { list, machine };
}
const FEW = 8; // places (chosen)

/** An operation with all that it waits for and all that waits for it, one behind the other, at another place of the list. */
function lineTo(floor: Floor, best: Found, i: number, random: Random): Listed {
  const { operations, next, nextAt } = floor;
  const line = new Set([i]);
  for (const each of line) for (const part of itemAt(operations, each).after) line.add(part);
  const behind = [i];
  for (const each of behind)
    for (let k = nextAt[each] ?? 0; k < (nextAt[each + 1] ?? 0); k++) {
      const after = next[k] ?? NONE;
      if (!line.has(after)) behind.push(after);
      line.add(after);
    }
  const to = random.below(best.list.length + 1) - 1 / 2;
  const found = rankOf(floor, best.list);
  const put = (of: Float64Array, each: number): void => {
    of[each] = to + (of[each] ?? 0) / (4 * best.list.length);
  };
  for (const each of line) {
    put(found.run, each);
    put(found.setUp, each);
  }
  return { list: inOrder(floor, found), machine: best.machine };
}
