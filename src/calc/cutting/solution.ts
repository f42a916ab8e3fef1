/** A set of patterns with repeats, and what it leaves out. Solutions are compared here and nowhere else. */
import { type CutPattern, mostRepeats, trimmedTo } from "./pattern.ts";
import type { Problem } from "./problem.ts";

export interface Use {
  readonly pattern: CutPattern;
  readonly repeats: number;
}

export interface Solution {
  readonly uses: readonly Use[];
  readonly cost: number;
  /** Value of the pieces left out. */
  readonly missing: number;
}

export function solutionOf(problem: Problem, uses: readonly Use[]): Solution {
  const remaining = Float64Array.from(problem.items, ({ quantity }) => quantity);
  const kept: Use[] = [];
  let cost = 0;
  // Repeats of one pattern with pieces beyond the demand fall apart into a full part and a trimmed sheet.
  for (const { pattern, repeats } of uses) {
    let left = repeats;
    let current: CutPattern | null = pattern;
    while (left > 0 && current) {
      const most = Math.min(left, mostRepeats(current, remaining));
      if (most > 0) {
        kept.push({ pattern: current, repeats: most });
        for (let k = 0; k < current.items.length; k++) remaining[current.items[k]!]! -= most * current.counts[k]!;
        cost += most * problem.sheets[current.sheet]!.cost;
        left -= most;
      }
      current = left > 0 ? trimmedTo(current, remaining) : current;
    }
  }
  let missing = 0;
  problem.items.forEach(({ value }, i) => {
    missing += value * remaining[i]!;
  });
  return { uses: kept, cost, missing };
}

/** Fewer pieces left out, then less metal, then fewer patterns. */
export function isBetter(a: Solution, b: Solution | null): boolean {
  if (!b) return true;
  if (Math.abs(a.missing - b.missing) > 1e-6) return a.missing < b.missing;
  if (Math.abs(a.cost - b.cost) > 1e-6) return a.cost < b.cost;
  return a.uses.length < b.uses.length;
}
