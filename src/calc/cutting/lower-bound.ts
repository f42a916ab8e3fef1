/**
 * The least any plan can cost: sheets enough for the pieces' area, in whole sheets and within the stock. True sizes, and
 * valid for every kind of cutting, stages or not.
 */
import type { Problem } from "./problem.ts";
import { cheapestMix } from "./sheet-mix.ts";

export function areaBound(problem: Problem, pieceArea: number): number {
  const available = problem.sheets.map((sheet) => sheet.available);
  const costs = problem.sheets.map(({ cost }) => cost);
  const { cost, relaxed, complete } = cheapestMix(problem, pieceArea, available, costs);
  const bound = complete ? cost : relaxed;
  return Number.isFinite(bound) ? bound : 0;
}
