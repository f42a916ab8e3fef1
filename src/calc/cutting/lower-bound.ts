/**
 * The least any plan can cost: a linear program over patterns, rounded up to what whole sheets can cost. Two levels of
 * cuts without limits are priced exactly; everything else is held against bars, which no limit and no level changes.
 */
import { barBound } from "./bar-bound.ts";
import type { Budget } from "./budget.ts";
import type { Problem } from "./problem.ts";
import { cheapestMix, leastMix } from "./sheet-mix.ts";

/** True sizes, in whole sheets and within the stock: quick, and where the search begins. */
export function areaBound(problem: Problem, pieceArea: number): number {
  const available = problem.sheets.map((sheet) => sheet.available);
  const costs = problem.sheets.map(({ cost }) => cost);
  const { cost, relaxed, complete } = cheapestMix(problem, pieceArea, available, costs);
  const bound = complete ? cost : relaxed;
  return Number.isFinite(bound) ? bound : 0;
}

/** Pieces on a sheet: so many fill a bar to its end, and no bound is better than the area's (fitted on generated shop bills). */
const MANY_PIECES = 12;

/** The better of the two ways to lay bars, rounded up; `area` is the bound so far. */
export function boundOfBars(problem: Problem, budget: Budget, area: number): number {
  const pieces = problem.items.reduce((sum, { quantity }) => sum + quantity, 0);
  const cheapest = Math.min(...problem.sheets.map(({ cost }) => cost));
  if (pieces * cheapest > MANY_PIECES * area) return area;
  let bound = area;
  for (const along of [0, 1] as const) {
    const reached = barBound(
      problem,
      along,
      budget,
      (low, cost) => roundedUp(problem, cost) <= Math.max(bound, roundedUp(problem, low)) * (1 + 1e-9),
    );
    bound = Math.max(bound, roundedUp(problem, reached));
  }
  return bound;
}

/** Least cost of whole sheets, within the stock, that is not below `cost`. */
export const roundedUp = (problem: Problem, cost: number): number => {
  const most = leastMix(problem.sheets, cost);
  return Number.isFinite(most) ? most : cost;
};
