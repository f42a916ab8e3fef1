/**
 * One pattern after another: the pattern that fills its sheet best is cut as often as the demand lets it, until nothing
 * is left. Quick, and good enough to be the first plan; also closes what the dive leaves over.
 */
import type { Budget } from "./budget.ts";
import { type CutPattern, mostRepeats } from "./pattern.ts";
import { patternAlone } from "./pattern-alone.ts";
import type { Problem } from "./problem.ts";
import type { Use } from "./solution.ts";
import type { StripPatterns } from "./strip-patterns.ts";

/** One remaining piece alone on the cheapest sheet that takes it, for what no strip can be made of. */
function loneRest(problem: Problem, remaining: Float64Array, supply: Float64Array): CutPattern | null {
  const cheapest = problem.sheets.map((_, s) => s).sort((a, b) => problem.sheets[a]!.cost - problem.sheets[b]!.cost);
  for (let item = 0; item < remaining.length; item++) {
    if (remaining[item]! < 1) continue;
    for (const sheet of cheapest) {
      const pattern = supply[sheet]! >= 1 ? patternAlone(problem, item, sheet) : null;
      if (pattern) return pattern;
    }
  }
  return null;
}

export function sequentialPlan(
  problem: Problem,
  pricing: StripPatterns,
  remaining: Float64Array,
  supply: Float64Array,
  values: ArrayLike<number>,
  costs: ArrayLike<number>,
  budget: Budget,
): Use[] {
  const uses: Use[] = [];
  for (;;) {
    const best =
      pricing.dearest(values, remaining, (sheet) => supply[sheet]! >= 1, costs) ?? loneRest(problem, remaining, supply);
    if (!best) return uses;
    const repeats = Math.min(mostRepeats(best, remaining), supply[best.sheet]!);
    if (repeats < 1) return uses;
    uses.push({ pattern: best, repeats });
    supply[best.sheet]! -= repeats;
    for (let k = 0; k < best.items.length; k++) remaining[best.items[k]!]! -= repeats * best.counts[k]!;
    if (budget.over()) return uses;
  }
}
