import { cheapestWithin, type Within } from "./cheapest-within.ts";

import { inTime, type Opener } from "./openers.ts";
import type { Choice, Machine, RouteLine, Shop } from "./problem.ts";

export type Goal = "cost" | "time";

/**
 * The cheapest assignment that finishes by then, of those that cost no more than `most`; for the goal "time" any that
 * finishes by then.
 */
export function within(
  lines: readonly RouteLine[],
  shop: Shop,
  by: number,
  goal: Goal,
  first: readonly Opener[],
  most = Infinity,
): Within {
  // A queue that is longer than the time there is leaves nothing, not less than nothing: an idle machine is in nobody's way.
  const capacity = {
    shear: Math.max(0, shop.shear.capacity(by)),
    waterjet: Math.max(0, shop.waterjet.capacity(by)),
  };
  const bending = lines.reduce((sum, { brake }) => sum + brake, 0);
  if (bending === 0) return assign(lines, capacity, goal, [], most);
  const opening = inTime(first, bending, shop, by);
  if (opening.length === 0) return NOTHING_FITS;
  const relaxed = assign(lines, capacity, goal, [], most);
  if (!relaxed.machines) return relaxed;
  if (opening.some(({ line, machine }) => relaxed.machines![line] === machine)) return relaxed;
  // The cheapest plan opens the brake too late: one of the openers must be cut where it opens in time.
  let best = NOTHING_FITS;
  let proved = true;
  let bound = Infinity;
  for (const opener of opening) {
    const found = assign(lines, capacity, goal, [opener], most);
    bound = Math.min(bound, found.bound);
    proved &&= found.proved;
    if (found.cost < best.cost) best = found;
    if (goal === "time" && best.machines) return best;
    if (best.cost <= relaxed.bound) break;
  }
  return { ...best, proved, bound: Math.max(relaxed.bound, Math.min(bound, best.cost)) };
}

const NOTHING_FITS: Within = { machines: undefined, cost: Infinity, bound: Infinity, proved: true };

/** With some lines' machines fixed. */
function assign(
  lines: readonly RouteLine[],
  capacity: { readonly shear: number; readonly waterjet: number },
  goal: Goal,
  fixed: readonly Opener[],
  most: number,
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
  const found =
    goal === "cost" ? cheapestWithin(choices, left, most - base) : cheapestWithin(choices, left, left.waterjet, true);
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
