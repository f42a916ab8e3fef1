/**
 * The least any plan can cost: sheets enough for the pieces' area, in whole sheets and within the stock. True sizes, and
 * valid for every kind of cutting, stages or not.
 */
import type { Problem } from "./problem.ts";

/** Branches looked at before the bound is left as it is with the last sheet divided. */
const MOST_BRANCHES = 20_000;

export function areaBound(problem: Problem, pieceArea: number): number {
  const kinds = problem.sheets
    .map(({ w, h, cost, available, roots }) => ({ area: w * h, cost, available: roots.length > 0 ? available : 0 }))
    .filter(({ area, available }) => area > 0 && available >= 1)
    .sort((a, b) => a.cost / a.area - b.cost / b.area);
  const divided = (from: number, area: number): number => {
    let cost = 0;
    let left = area;
    for (let k = from; k < kinds.length && left > 0; k++) {
      const { area: each, cost: price, available } = kinds[k]!;
      const take = Math.min(available, left / each);
      cost += take * price;
      left -= take * each;
    }
    return left > 1e-6 * area ? Infinity : cost;
  };
  const relaxed = divided(0, pieceArea);
  let best = Infinity;
  let branches = 0;
  const branch = (k: number, area: number, cost: number): void => {
    if (area <= 0) {
      best = Math.min(best, cost);
      return;
    }
    if (k === kinds.length || branches++ > MOST_BRANCHES || cost + divided(k, area) >= best - 1e-9) return;
    const { area: each, cost: price, available } = kinds[k]!;
    const most = Math.min(available, Math.ceil(area / each));
    for (let n = most; n >= 0 && branches <= MOST_BRANCHES; n--) branch(k + 1, area - n * each, cost + n * price);
  };
  branch(0, pieceArea, 0);
  if (branches > MOST_BRANCHES) return Number.isFinite(relaxed) ? relaxed : 0;
  return Number.isFinite(best) ? best : 0;
}
