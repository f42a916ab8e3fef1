/** The linear program over all patterns of two levels, where the search may begin to dive. */
import type { Budget } from "./budget.ts";
import { cellOf } from "./cell-of.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { roundedUp } from "./lower-bound.ts";
import { PatternProgram } from "./pattern-program.ts";
import type { Problem } from "./problem.ts";
import type { Solution } from "./solution.ts";
import { StripPatterns } from "./strip-patterns.ts";

/** Longest side in cells where a bound is wanted: finer than any published instance. */
const CELLS_EXACT = 4000;
/** Share of the budget: fitted on published instances. */
const ROOT_SHARE = 0.45;

export interface Root {
  readonly program: PatternProgram;
  readonly pricing: StripPatterns;
  /** Whether a dive prices patterns anew; else it keeps to those that the program knows. */
  readonly anew: boolean;
}

/** Solved as far as its share of the budget goes, with the least that any plan can cost. */
export function rootProgram(
  problem: Problem,
  budget: Budget,
  best: Solution,
  allowed: ((layout: GuillotineLayout) => boolean) | null,
): { readonly root: Root; readonly bound: number } {
  const demand = problem.items.map(({ quantity }) => quantity);
  const supply = problem.sheets.map(({ available }) => available);
  const part = budget.share(budget.units * ROOT_SHARE);
  const program = new PatternProgram(problem, part, demand, supply);
  for (const { pattern } of best.uses) program.add(pattern);
  const pricing = (of: Budget) => new StripPatterns(problem, of, cellOf(problem, CELLS_EXACT), allowed);
  // Once the bound is reached; otherwise good columns are worth more than the time.
  const enough = (low: number) => best.missing === 0 && best.cost <= roundedUp(problem, low) * (1 + 1e-9);
  const { bound } = program.generate(pricing(part), demand, supply, Infinity, enough);
  budget.spend(part.used);
  program.spendFrom(budget);
  return { root: { program, pricing: pricing(budget), anew: true }, bound: roundedUp(problem, bound) };
}
