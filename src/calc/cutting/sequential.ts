/**
 * One pattern after another: the pattern that fills its sheet best is cut as often as the demand lets it, until nothing
 * is left. Quick, and good enough to be the first plan; also closes what the dive leaves over.
 */
import { itemAt } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { gaugesOf } from "./gauges.ts";
import { type CutPattern, mostRepeats, takeOff, type Use } from "./pattern.ts";
import { patternAlone } from "./pattern-alone.ts";
import type { Problem } from "./problem.ts";
import type { StripPatterns } from "./strip-patterns.ts";

/** One remaining piece alone on the cheapest sheet that takes it, for what no strip can be made of. */
function loneRest(problem: Problem, remaining: Float64Array, supply: Float64Array): CutPattern | null {
  const cheapest = problem.sheets
    .map((_, s) => s)
    .sort((a, b) => itemAt(problem.sheets, a).cost - itemAt(problem.sheets, b).cost);
  for (let item = 0; item < remaining.length; item++) {
    if (itemAt(remaining, item) < 1) continue;
    for (const sheet of cheapest) {
      const pattern = itemAt(supply, sheet) >= 1 ? patternAlone(problem, item, sheet) : null;
      if (pattern) return pattern;
    }
  }
  return null;
}

/** With `thrift` a strip or crosscut whose gauge is set already, for `kept` or for an earlier pattern, counts that share more. */
export function sequentialPlan(
  problem: Problem,
  pricing: StripPatterns,
  remaining: Float64Array,
  supply: Float64Array,
  values: ArrayLike<number>,
  costs: ArrayLike<number>,
  budget: Budget,
  thrift = 0,
  kept: readonly Use[] = [],
): Use[] {
  const uses: Use[] = [];
  const gauges = new Set<number>();
  const remember = (patterns: readonly CutPattern[]) => thrift > 0 && gaugesOf(problem, patterns, gauges);
  remember(kept.map(({ pattern }) => pattern));
  const favor = thrift > 0 ? (extent: number) => (gauges.has(extent) ? 1 + thrift : 1) : undefined;
  for (;;) {
    const best =
      pricing.dearest(values, remaining, (sheet) => itemAt(supply, sheet) >= 1, costs, favor) ??
      loneRest(problem, remaining, supply);
    if (!best) return uses;
    const repeats = Math.min(mostRepeats(best, remaining), itemAt(supply, best.sheet));
    if (repeats < 1) return uses;
    uses.push({ pattern: best, repeats });
    takeOff([{ pattern: best, repeats }], remaining, supply);
    remember([best]);
    if (budget.over()) return uses;
  }
}
