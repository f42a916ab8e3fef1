import { itemAt } from "../../units/certain.ts";
import { cheapestWithin, type Within } from "./cheapest-within.ts";

import { inTime, type Opener } from "./openers.ts";
import { type Choice, cutOn, type Machine, type MachineTimes, type RouteLine } from "./problem.ts";

type Goal = "cost" | "time";

interface Asked {
  readonly by: number;
  readonly goal: Goal;
  /** Who may open the brake, the earliest first. */
  readonly first: readonly Opener[];
  readonly most?: number;
}

/**
 * The cheapest assignment that finishes by then, of those that cost no more than `most`; for the goal "time" any that
 * finishes by then.
 */
export function within(
  lines: readonly RouteLine[],
  shop: MachineTimes,
  { by, goal, first, most = Infinity }: Asked,
): Within {
  // A queue that is longer than the time there is leaves nothing, not less than nothing: an idle machine is in nobody's way.
  const capacity = {
    shear: Math.max(0, shop.shear.capacity(by)),
    waterjet: Math.max(0, shop.waterjet.capacity(by)),
  };
  const bending = lines.reduce((sum, { brake }) => sum + brake, 0);
  if (bending === 0) return assign(lines, capacity, goal, most);
  const opening = inTime(first, bending, shop, by);
  if (opening.length === 0) return NOTHING_FITS;
  const relaxed = assign(lines, capacity, goal, most);
  const { machines } = relaxed;
  if (!machines || opening.some(({ line, machine }) => machines[line] === machine)) return relaxed;
  // The cheapest plan opens the brake too late: one of the openers must be cut where it opens in time.
  let best = NOTHING_FITS;
  let proved = true;
  let bound = Infinity;
  for (const opener of opening) {
    const found = assign(lines, capacity, goal, most, opener);
    bound = Math.min(bound, found.bound);
    proved &&= found.proved;
    if (found.cost < best.cost) best = found;
    if (goal === "time" && best.machines) return best;
    if (best.cost <= relaxed.bound) break;
  }
  return { ...best, proved, bound: Math.max(relaxed.bound, Math.min(bound, best.cost)) };
}

const NOTHING_FITS: Within = { machines: undefined, cost: Infinity, bound: Infinity, proved: true };

/** With the machine of one line fixed, where there is an opener. */
function assign(
  lines: readonly RouteLine[],
  capacity: { readonly shear: number; readonly waterjet: number },
  goal: Goal,
  most: number,
  opener?: Opener,
): Within {
  const left = { ...capacity };
  let base = 0;
  const machines: Machine[] = [];
  const free: { readonly index: number; readonly choice: Choice }[] = [];
  for (const [index, line] of lines.entries()) {
    const { shear, waterjet } = line;
    const isFixed = opener?.line === index;
    if (!isFixed && shear && waterjet) {
      free.push({ index, choice: { shear, waterjet } });
      continue;
    }
    const machine = isFixed ? opener.machine : shear ? "shear" : "waterjet";
    const { time, cost } = cutOn(line, machine);
    machines[index] = machine;
    left[machine] -= time;
    base += cost;
  }
  if (left.shear < 0 || left.waterjet < 0) return NOTHING_FITS;
  const choices = free.map(({ choice: { shear, waterjet } }): Choice => {
    return goal === "cost"
      ? { shear, waterjet }
      : { shear: { time: shear.time, cost: 0 }, waterjet: { time: waterjet.time, cost: waterjet.time } };
  });
  const found =
    goal === "cost" ? cheapestWithin(choices, left, most - base) : cheapestWithin(choices, left, left.waterjet, true);
  found.machines?.forEach((machine, k) => {
    machines[itemAt(free, k).index] = machine;
  });
  const total = goal === "cost" ? base : 0;
  return {
    machines: found.machines ? machines : undefined,
    cost: found.cost + total,
    bound: found.bound + total,
    proved: found.proved,
  };
}
