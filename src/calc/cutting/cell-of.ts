/** The grid of the strip tables. */
import type { Problem } from "./problem.ts";

/** Coarsest grid on which every size is whole, or one coarse enough to be quick. */
export function cellOf(problem: Problem, cells: number): number {
  let common = 0;
  let longest = 1;
  const divide = (a: number, b: number): number => (b === 0 ? a : divide(b, a % b));
  for (const { w, h } of [...problem.sheets, ...problem.items]) {
    common = divide(divide(common, w), h);
  }
  for (const { w, h } of problem.sheets) longest = Math.max(longest, w, h);
  return Math.max(1, common) * Math.max(1, Math.ceil(longest / Math.max(1, common) / cells));
}
