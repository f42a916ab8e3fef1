/**
 * One pattern after another: the pattern that fills its sheet best is cut as often as the demand lets it, until nothing
 * is left. Quick, and good enough to be the first plan; also closes what the dive leaves over.
 */
import type { Budget } from "./budget.ts";
import { mostRepeats } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Use } from "./solution.ts";
import type { StripPatterns } from "./strip-patterns.ts";

export function sequentialPlan(
  problem: Problem,
  pricing: StripPatterns,
  remaining: Float64Array,
  supply: Float64Array,
  values: ArrayLike<number>,
  budget: Budget,
): Use[] {
  const uses: Use[] = [];
  for (;;) {
    const work = pricing.work;
    const priced = pricing.price(
      values,
      remaining,
      (sheet) => supply[sheet]! >= 1,
      () => 0,
    );
    budget.spend(pricing.work - work);
    let best: (typeof priced)[number]["pattern"] = null;
    let bestRatio = 0;
    for (const { pattern } of priced) {
      if (!pattern) continue;
      let worth = 0;
      for (let k = 0; k < pattern.items.length; k++) worth += values[pattern.items[k]!]! * pattern.counts[k]!;
      const ratio = worth / problem.sheets[pattern.sheet]!.cost;
      if (ratio > bestRatio) {
        bestRatio = ratio;
        best = pattern;
      }
    }
    if (!best) return uses;
    const repeats = Math.min(mostRepeats(best, remaining), supply[best.sheet]!);
    if (repeats < 1) return uses;
    uses.push({ pattern: best, repeats });
    supply[best.sheet]! -= repeats;
    for (let k = 0; k < best.items.length; k++) remaining[best.items[k]!]! -= repeats * best.counts[k]!;
    if (budget.over()) return uses;
  }
}
