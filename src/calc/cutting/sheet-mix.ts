/** The cheapest set of sheets whose usable area holds a given area: how many of each kind, within the stock. */
import { itemAt } from "../../units/certain.ts";
import type { Problem } from "./problem.ts";

/** Branches looked at before the search for a mix gives up. */
const MOST_BRANCHES = 20_000;

export interface Mix {
  readonly counts: Float64Array;
  readonly cost: number;
  /** Least cost with the last sheet divided; what is left when the search gave up. */
  readonly relaxed: number;
  readonly complete: boolean;
}

export function cheapestMix(problem: Problem, area: number, supply: ArrayLike<number>, costs: ArrayLike<number>): Mix {
  const kinds = problem.sheets
    .map(({ w, h, roots }, s) => ({
      s,
      area: w * h,
      cost: itemAt(costs, s),
      available: roots.length > 0 ? itemAt(supply, s) : 0,
    }))
    .filter(({ area, available }) => area > 0 && available >= 1)
    .sort((a, b) => a.cost / a.area - b.cost / b.area);
  const divided = (from: number, wanted: number): number => {
    let cost = 0;
    let left = wanted;
    for (let k = from; k < kinds.length && left > 0; k++) {
      const { area: each, cost: price, available } = itemAt(kinds, k);
      const take = Math.min(available, left / each);
      cost += take * price;
      left -= take * each;
    }
    return left > 1e-6 * wanted ? Infinity : cost;
  };
  const counts = new Float64Array(problem.sheets.length);
  const best = new Float64Array(problem.sheets.length);
  let least = Infinity;
  let branches = 0;
  const branch = (k: number, left: number, cost: number): void => {
    if (left <= 0) {
      if (cost >= least) return;
      least = cost;
      best.set(counts);
      return;
    }
    if (k === kinds.length || branches++ > MOST_BRANCHES || cost + divided(k, left) >= least - 1e-9) return;
    const { s, area: each, cost: price, available } = itemAt(kinds, k);
    const most = Math.min(available, Math.ceil(left / each));
    for (let n = most; n >= 0 && branches <= MOST_BRANCHES; n--) {
      counts[s] = n;
      branch(k + 1, left - n * each, cost + n * price);
    }
    counts[s] = 0;
  };
  branch(0, area, 0);
  return { counts: best, cost: least, relaxed: divided(0, area), complete: branches <= MOST_BRANCHES };
}

/** Least sum of the costs of whole sheets that is not below `wanted`; `wanted` itself where the search gives up. */
export function leastMix(
  sheets: readonly { readonly cost: number; readonly available: number }[],
  wanted: number,
): number {
  const kinds = sheets.filter(({ cost, available }) => cost > 0 && available >= 1).sort((a, b) => b.cost - a.cost);
  const goal = wanted * (1 - 1e-9);
  let least = Infinity;
  let branches = 0;
  const branch = (k: number, left: number, sum: number): void => {
    if (left <= 0) {
      least = Math.min(least, sum);
      return;
    }
    if (k === kinds.length || branches++ > MOST_BRANCHES || sum + left >= least) return;
    const { cost, available } = itemAt(kinds, k);
    const most = Math.min(available, Math.ceil(left / cost));
    if (k === kinds.length - 1) {
      if (most * cost >= left) least = Math.min(least, sum + most * cost);
      return;
    }
    for (let n = most; n >= 0; n--) branch(k + 1, left - n * cost, sum + n * cost);
  };
  branch(0, goal, 0);
  return branches > MOST_BRANCHES ? wanted : least;
}
