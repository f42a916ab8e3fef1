/**
 * From the relaxation to whole sheets: what comes out whole is kept, the rest of the demand is solved again with patterns
 * made for it, and so on down. The last pieces are closed one pattern after another.
 */
import type { Budget } from "./budget.ts";
import type { ColumnGeneration, Relaxation } from "./column-generation.ts";
import { type CutPattern, mostRepeats } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";
import { sequentialPlan } from "./sequential.ts";
import type { Use } from "./solution.ts";
import type { StripPatterns } from "./strip-patterns.ts";

export function dive(
  problem: Problem,
  pricing: StripPatterns,
  columns: ColumnGeneration,
  start: Relaxation,
  budget: Budget,
  random: Random | null,
): Use[] {
  const remaining = Float64Array.from(problem.items, ({ quantity }) => quantity);
  const supply = Float64Array.from(problem.sheets, ({ available }) => available);
  const uses: Use[] = [];
  const take = (pattern: CutPattern, wanted: number) => {
    const repeats = Math.min(wanted, mostRepeats(pattern, remaining), supply[pattern.sheet]!);
    if (repeats < 1) return;
    uses.push({ pattern, repeats });
    supply[pattern.sheet]! -= repeats;
    for (let k = 0; k < pattern.items.length; k++) remaining[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
  };
  let relaxation = start;
  for (;;) {
    const before = uses.length;
    const byLevel = [...relaxation.levels].sort((a, b) => b.level - a.level);
    for (const { pattern, level } of byLevel) {
      if (level >= 1 - 1e-6) take(pattern, Math.floor(level + 1e-6));
    }
    if (uses.length === before) {
      const ranked = byLevel.map(({ pattern, level }) => ({
        pattern,
        level: level % 1,
        rank: (level % 1) * (random ? 0.6 + 0.8 * random.unit() : 1),
      }));
      ranked.sort((a, b) => b.rank - a.rank);
      const most = Math.max(1, Math.ceil(ranked.length * ROUNDED_UP_AT_ONCE));
      for (let k = 0; k < ranked.length && k < most; k++) {
        if (k === 0 || ranked[k]!.level > 0.75) take(ranked[k]!.pattern, 1);
      }
    }
    if (uses.length === before || budget.over()) break;
    if (!remaining.some((left) => left > 0)) return uses;
    relaxation = columns.solve(pricing, remaining, supply, ROUNDS_PER_LEVEL, 0.002);
  }
  const values = Float64Array.from(problem.items, ({ w, h }) => w * h);
  uses.push(...sequentialPlan(problem, pricing, remaining, supply, values, budget));
  return uses;
}

const ROUNDED_UP_AT_ONCE = 0.1;
const ROUNDS_PER_LEVEL = 12;
