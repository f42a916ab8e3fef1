/**
 * From the linear program to whole sheets: what it uses in full is cut so often, then what it uses most is cut once more,
 * and the rest is priced again, until nothing is left (diving: Wolsey, Integer Programming, 1998; memory, unverified).
 */
import { itemAt } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { type CutPattern, mostRepeats, takeOff, type Use } from "./pattern.ts";
import type { PatternProgram } from "./pattern-program.ts";
import type { Random } from "./random.ts";
import type { StripPatterns } from "./strip-patterns.ts";

/** Rounds of pricing after a pattern was fixed; how far amounts are disturbed so that dives differ: fitted. */
const ROUNDS = 3;
const NOISE = 0.2;
/** Patterns used more than this are all fixed together: fitted. */
const SURE = 0.65;
/** An amount this near to the next whole number is as good as it: more than the program's amounts are shifted by. */
const NEARLY = 1e-3;

/**
 * Changes `remaining` and `supply` to what is left when the budget ends or no pattern can be found. Without `pricing` the
 * patterns are those that the program knows.
 */
export function dive(
  program: PatternProgram,
  pricing: StripPatterns | null,
  remaining: Float64Array,
  supply: Float64Array,
  budget: Budget,
  random: Random,
  noise: boolean,
): Use[] {
  const uses: Use[] = [];
  const take = (pattern: CutPattern, most: number): boolean => {
    const repeats = Math.min(most, mostRepeats(pattern, remaining), itemAt(supply, pattern.sheet));
    if (repeats < 1) return false;
    uses.push({ pattern, repeats });
    takeOff([{ pattern, repeats }], remaining, supply);
    return true;
  };
  while (!budget.over() && remaining.some((count) => count > 0)) {
    let found = false;
    const used = program.inUse();
    for (const { pattern, amount } of used) {
      if (amount >= 1 - NEARLY && take(pattern, Math.floor(amount + NEARLY))) found = true;
    }
    if (!found) {
      const ranked = used
        .map((use) => ({ ...use, rank: use.amount * (noise ? 1 + NOISE * random.unit() : 1) }))
        .sort((a, b) => b.rank - a.rank);
      for (const { pattern, rank } of ranked) {
        if (found && rank < SURE) break;
        if (take(pattern, 1)) found = true;
      }
    }
    if (!found) {
      if (!pricing) return uses;
      // Every pattern in use gives more of something than is still wanted.
      const best = pricing.dearest(program.prices, remaining, (s) => itemAt(supply, s) >= 1, program.costs());
      if (!best || !take(best, mostRepeats(best, remaining))) return uses;
      program.add(best);
    }
    program.change(remaining, supply);
    if (pricing) program.generate(pricing, remaining, supply, ROUNDS);
    else program.solve();
  }
  return uses;
}
