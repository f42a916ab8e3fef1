/**
 * Plans that are simple to cut: every strip of its pieces' own width, which then need no sizing cut, and gauges that are set
 * already preferred. Made beside the search, for a share of its budget, where the time at the shear counts.
 */
import type { Budget } from "./budget.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import type { Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";
import { sequentialPlan } from "./sequential.ts";
import { StripPatterns } from "./strip-patterns.ts";
import { correctedValues } from "./value-correction.ts";

/** Share of the budget, how many plans, and how much more a strip counts whose gauge is set already: chosen. */
const SHARE = 0.2;
const PLANS = 8;
const THRIFT = 0.01;

interface Given {
  readonly problem: Problem;
  readonly budget: Budget;
  readonly allowed: ((layout: GuillotineLayout) => boolean) | null;
  readonly random: Random;
  readonly cell: number;
  readonly mostStacked: number;
  readonly demand: Float64Array;
  readonly supply: Float64Array;
}

export function simplePlans({ problem, budget, allowed, random, cell, mostStacked, demand, supply }: Given): Use[][] {
  const part = budget.share(budget.units * SHARE);
  const pricing = [1, mostStacked].map(
    (most) => new StripPatterns(problem, part, cell, allowed, { mostStacked: most, sized: false, keepToDemand: true }),
  );
  const weights = new Float64Array(problem.items.length).fill(1);
  const worth = Float64Array.from(problem.items, ({ value }) => value);
  const costs = Float64Array.from(problem.sheets, ({ cost }) => cost);
  const plans: Use[][] = [];
  for (let n = 0; n < PLANS && !part.over(); n++) {
    const values = n < pricing.length ? worth : correctedValues(problem, plans[n - 1]!, weights, random);
    plans.push(sequentialPlan(problem, pricing[n % 2]!, demand.slice(), supply.slice(), values, costs, part, THRIFT));
  }
  budget.spend(part.used);
  return plans;
}
