/**
 * The assignment that finishes first, or the cheapest that meets a due time, exactly. A finish can be kept when the
 * loads fit what each machine can do by then and some line opens the brake early enough; the earliest such finish is
 * found by halving, the cheapest assignment within it by cheapestWithin.
 */
import { type Choice, cheapestWithin, type Within } from "./cheapest-within.ts";
import { MACHINES, type Machine, type Route, type RouteLine, routeOf, type Shop } from "./problem.ts";

export interface BestRoute extends Route {
  /** No assignment finishes earlier. */
  readonly finishBound: number;
  /** No assignment that finishes by then (the due time, or the earliest finish) costs less. */
  readonly costBound: number;
  readonly proved: boolean;
  /** False: even the earliest finish misses the due time, and it is the earliest finish that is given. */
  readonly meetsDue: boolean;
}

export function bestRoute(lines: readonly RouteLine[], shop: Shop, due?: number): BestRoute {
  const first = openers(lines, shop);
  const earliest = earliestFinish(lines, shop, first);
  const meetsDue = due === undefined || earliest.finish <= due;
  const by = due !== undefined && meetsDue ? due : earliest.finish;
  const cheapest = within(lines, shop, by, "cost", first);
  const machines = cheapest.machines ?? earliest.machines;
  const route = routeOf(lines, machines, shop);
  return {
    ...route,
    finishBound: earliest.bound,
    costBound: Math.min(cheapest.bound, route.cost),
    proved: earliest.proved && cheapest.proved && cheapest.machines !== undefined,
    meetsDue,
  };
}

interface Earliest {
  readonly machines: readonly Machine[];
  readonly finish: number;
  readonly bound: number;
  readonly proved: boolean;
}

function earliestFinish(lines: readonly RouteLine[], shop: Shop, first: readonly Opener[]): Earliest {
  const starts = firstPlans(lines).map((machines) => routeOf(lines, machines, shop));
  let best = starts.reduce((a, b) => (b.finish < a.finish ? b : a));
  // Every finish below `low` is impossible; `bound` only counts what is proved.
  let low = Math.floor(lowest(lines, shop, first));
  let bound = low;
  while (low < best.finish) {
    const middle = Math.floor((low + best.finish) / 2);
    const found = within(lines, shop, middle, "time", first);
    if (found.machines) best = routeOf(lines, found.machines, shop);
    else {
      low = middle + 1;
      if (found.proved) bound = Math.max(bound, low);
    }
  }
  return {
    machines: best.machines,
    finish: best.finish,
    bound: Math.min(bound, best.finish),
    proved: bound >= best.finish,
  };
}

/** Every line on the one machine, on the other, and on the one where it takes less. */
function firstPlans(lines: readonly RouteLine[]): Machine[][] {
  const on = (choose: (line: RouteLine) => Machine) =>
    lines.map((line) => (!line.shear ? "waterjet" : !line.waterjet ? "shear" : choose(line)));
  return [
    on(() => "shear"),
    on(() => "waterjet"),
    on(({ shear, waterjet }) => (shear!.time <= waterjet!.time ? "shear" : "waterjet")),
  ];
}

/** A finish that is surely not too late: of each line alone, without anything else in the way. */
function lowest(lines: readonly RouteLine[], shop: Shop, first: readonly Opener[]): number {
  const bending = lines.reduce((sum, { brake }) => sum + brake, 0);
  const brake = bending > 0 ? shop.brake.finish(first[0]!.at, bending) : 0;
  return lines.reduce((most, line) => Math.max(most, Math.min(...endsOf(line, shop).map(({ at }) => at))), brake);
}

interface Opener {
  readonly line: number;
  readonly machine: Machine;
  /** When its blank would be there, cut first. */
  readonly at: number;
}

const endsOf = (line: RouteLine, shop: Shop, index = 0): Opener[] =>
  MACHINES.flatMap((machine) => {
    const cut = line[machine];
    return cut
      ? [{ line: index, machine, at: cut.time > 0 || line.brake > 0 ? shop[machine].finish(Math.max(1, cut.time)) : 0 }]
      : [];
  });

/** Lines that could be the first at the brake, the earliest first. */
const openers = (lines: readonly RouteLine[], shop: Shop): Opener[] =>
  lines.flatMap((line, i) => (line.brake > 0 ? endsOf(line, shop, i) : [])).sort((a, b) => a.at - b.at);

/** The openers, earliest first, that still let the brake finish by then: a finish later than another's is later too. */
function inTime(first: readonly Opener[], bending: number, shop: Shop, by: number): readonly Opener[] {
  let [low, high] = [0, first.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shop.brake.finish(first[middle]!.at, bending) <= by) low = middle + 1;
    else high = middle;
  }
  return first.slice(0, low);
}

type Goal = "cost" | "time";

/** The cheapest assignment that finishes by then; for the goal "time" any that does. */
function within(lines: readonly RouteLine[], shop: Shop, by: number, goal: Goal, first: readonly Opener[]): Within {
  // A queue that is longer than the time there is leaves nothing, not less than nothing: an idle machine is in nobody's way.
  const capacity = {
    shear: Math.max(0, shop.shear.capacity(by)),
    waterjet: Math.max(0, shop.waterjet.capacity(by)),
  };
  const bending = lines.reduce((sum, { brake }) => sum + brake, 0);
  if (bending === 0) return assign(lines, capacity, goal, []);
  const opening = inTime(first, bending, shop, by);
  if (opening.length === 0) return NOTHING_FITS;
  const relaxed = assign(lines, capacity, goal, []);
  if (!relaxed.machines) return relaxed;
  if (opening.some(({ line, machine }) => relaxed.machines![line] === machine)) return relaxed;
  // The cheapest plan opens the brake too late: one of the openers must be cut where it opens in time.
  let best: Within = { ...NOTHING_FITS, proved: relaxed.proved };
  let bound = Infinity;
  for (const opener of opening) {
    const found = assign(lines, capacity, goal, [opener]);
    bound = Math.min(bound, found.bound);
    if (found.cost < best.cost) best = { ...found, proved: best.proved && found.proved };
    else if (!found.proved) best = { ...best, proved: false };
    if (goal === "time" && best.machines) return best;
    if (best.cost <= relaxed.bound) break;
  }
  return { ...best, bound: Math.max(relaxed.bound, Math.min(bound, best.cost)) };
}

const NOTHING_FITS: Within = { machines: undefined, cost: Infinity, bound: Infinity, proved: true };

/** With some lines' machines fixed. */
function assign(
  lines: readonly RouteLine[],
  capacity: { readonly shear: number; readonly waterjet: number },
  goal: Goal,
  fixed: readonly Opener[],
): Within {
  const left = { ...capacity };
  let base = 0;
  const machines: Machine[] = [];
  const free: number[] = [];
  lines.forEach((line, i) => {
    const machine =
      fixed.find((opener) => opener.line === i)?.machine ??
      (!line.shear ? "waterjet" : !line.waterjet ? "shear" : undefined);
    if (machine === undefined) {
      free.push(i);
      return;
    }
    machines[i] = machine;
    left[machine] -= line[machine]!.time;
    base += line[machine]!.cost;
  });
  if (left.shear < 0 || left.waterjet < 0) return NOTHING_FITS;
  const choices = free.map((i): Choice => {
    const { shear, waterjet } = lines[i]! as Choice;
    return goal === "cost"
      ? { shear, waterjet }
      : { shear: { time: shear.time, cost: 0 }, waterjet: { time: waterjet.time, cost: waterjet.time } };
  });
  const found = cheapestWithin(choices, left, goal === "time" ? left.waterjet : undefined);
  found.machines?.forEach((machine, k) => {
    machines[free[k]!] = machine;
  });
  const total = goal === "cost" ? base : 0;
  return {
    machines: found.machines ? machines : undefined,
    cost: found.cost + total,
    bound: found.bound + total,
    proved: found.proved,
  };
}
