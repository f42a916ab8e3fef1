/**
 * The search for a plan, best plan so far at any time: one pattern after another first, again with corrected values a few
 * times, then ruin and recreate on a cheaper set of sheets, as long as the budget lasts and the bound is not reached.
 */
import { Budget } from "./budget.ts";
import { isUnlimited } from "./gauge-rule.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { InsertionMoves } from "./insertion-moves.ts";
import { keptSheets } from "./kept-sheets.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { reseat } from "./reseat.ts";
import { sequentialPlan } from "./sequential.ts";
import { layoutCanBeSheared } from "./shear-check.ts";
import { isBetter, type Solution, solutionOf, type Use } from "./solution.ts";
import { StripPatterns } from "./strip-patterns.ts";
import { tightMix } from "./tight-mix.ts";
import { correctedValues } from "./value-correction.ts";

// The figures below are fitted on generated shop bills and on published cutting-stock and bin-packing instances.
/** Work spent on corrected plans first, for one kind of sheet and for several, and again between runs of insertion. */
const FIRST_WORK = 60_000_000;
const FIRST_WORK_MIXED = 2_000_000_000;
const LATER_WORK = 15_000_000;
const MOST_CORRECTIONS_A_KIND = 12;
/** Plans made from nothing before parts of the best one are kept. */
const FULL_PLANS = 4;
const FULL_PLANS_MIXED = 1;
/** Comparing a plan: what a tiny bill, whose tables are filled in no time, spends its budget on. */
const OFFER_WORK = 20_000;
/** How far sheet costs are disturbed, so that plans differ. */
const COST_NOISE = 0.02;
/**
 * How much more a strip or a crosscut counts where its back gauge is set already, and up to how many sheets: a small bill needs
 * many gauges for few cuts, a large one is better served with the metal.
 */
const THRIFT = 0.01;
const THRIFT_SHEETS = 18;
/** Pieces of one item stacked across a strip where a third stage is allowed. */
const MOST_STACKED = 3;
/** Longest side of a sheet in cells of the strip tables. */
const CELLS = 1200;
const CELLS_MIXED = 2000;
const FIRST_CELLS = 300;

export class PlanSearch {
  best: Solution | null = null;
  private readonly random: Random;
  private readonly allowed: ((layout: GuillotineLayout) => boolean) | null;
  private readonly demand: Float64Array;
  private readonly supply: Float64Array;
  private readonly moves: InsertionMoves;
  private readonly thrift: number;

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    private readonly bound: number,
    seed: number,
    private readonly found: (solution: Solution) => void = () => {},
  ) {
    this.random = new Random(seed);
    this.allowed =
      isUnlimited(problem.rule) && problem.sheets.every(({ trimPartLimit }) => trimPartLimit === Infinity)
        ? null
        : (layout) => layoutCanBeSheared(problem, layout);
    const cheapest = Math.min(...problem.sheets.map(({ cost }) => cost));
    this.thrift = problem.rule.reach < Infinity && bound < THRIFT_SHEETS * cheapest ? THRIFT : 0;
    this.demand = Float64Array.from(problem.items, ({ quantity }) => quantity);
    this.supply = Float64Array.from(problem.sheets, ({ available }) => available);
    this.moves = new InsertionMoves(problem, budget, this.random, this.allowed);
  }

  private offer(uses: readonly Use[]): boolean {
    this.budget.spend(OFFER_WORK);
    const solution = solutionOf(this.problem, reseat(this.problem, uses), this.thrift > 0);
    if (!isBetter(solution, this.best)) return false;
    this.best = solution;
    this.found(solution);
    return true;
  }

  get proved(): boolean {
    return this.best !== null && this.best.missing === 0 && this.best.cost <= this.bound * (1 + 1e-9);
  }

  private get done(): boolean {
    return this.budget.over() || this.proved;
  }

  run(): void {
    const { problem } = this;
    const { budget } = this;
    const mixed = problem.sheets.length > 1;
    const stacked = problem.stages > 2 ? MOST_STACKED : 1;
    // The first plan is made on a coarse grid and to the end, whatever the budget: it is the one there always is.
    const whole = new Budget(Number.POSITIVE_INFINITY);
    const coarse = new StripPatterns(problem, whole, cellOf(problem, FIRST_CELLS), this.allowed, 1);
    const pricing = new StripPatterns(
      problem,
      budget,
      cellOf(problem, mixed ? CELLS_MIXED : CELLS),
      this.allowed,
      stacked,
      mixed, // fitted: better with several kinds of sheet, a little worse with one
    );
    const weights = new Float64Array(problem.items.length).fill(1);
    const worth = Float64Array.from(problem.items, ({ value }) => value);
    let last = this.planRest(coarse, whole, [], worth, 0);
    budget.spend(whole.used);
    const correct = (work: number, fullPlans: number) => {
      const until = this.budget.used + work;
      const most = MOST_CORRECTIONS_A_KIND * problem.sheets.length;
      for (let n = 0; n < most && this.budget.used < until && !this.done; n++) {
        const values = correctedValues(problem, last, weights, this.random);
        last =
          n < fullPlans
            ? this.planRest(pricing, budget, [], values, COST_NOISE)
            : this.planRest(
                pricing,
                budget,
                keptSheets(problem, this.best!.uses, this.random),
                values,
                COST_NOISE,
                mixed,
              );
      }
    };
    if (!this.done) {
      if (mixed) correct(FIRST_WORK_MIXED, FULL_PLANS_MIXED);
      else correct(FIRST_WORK, FULL_PLANS);
    }
    while (!this.done) {
      const { missing, uses } = this.best!;
      const moved = missing > 0 ? this.moves.insertMissing(uses) : this.moves.insertCheaper(uses);
      if (moved) this.offer(moved);
      correct(LATER_WORK, this.random.below(2));
    }
  }

  /** Keeps some sheets and plans the rest of the demand one pattern after another; with `tight` on fewer sheets first. */
  private planRest(
    pricing: StripPatterns,
    budget: Budget,
    kept: readonly Use[],
    values: Float64Array,
    noise: number,
    tight = false,
  ): Use[] {
    const { problem, random } = this;
    const costs = Float64Array.from(problem.sheets, ({ cost }) => cost * (1 + noise * (random.unit() - 0.5)));
    const remaining = this.demand.slice();
    const supply = this.supply.slice();
    for (const { pattern, repeats } of kept) {
      supply[pattern.sheet]! -= repeats;
      for (let k = 0; k < pattern.items.length; k++) remaining[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
    }
    const uses = [...kept];
    const thrift = noise > 0 ? this.thrift : 0;
    if (tight && this.best?.missing === 0) {
      const mix = tightMix(problem, this.best.uses, kept, remaining, supply, costs, random);
      for (let s = 0; s < mix.length; s++) supply[s]! -= mix[s]!;
      uses.push(...sequentialPlan(problem, pricing, remaining, mix, values, costs, budget, thrift, kept));
      for (let s = 0; s < mix.length; s++) supply[s]! += mix[s]!;
      const placed = this.moves.insertLast(uses, remaining);
      if (placed) {
        this.offer(placed);
        return placed;
      }
    }
    uses.push(...sequentialPlan(problem, pricing, remaining, supply, values, costs, budget, thrift, uses));
    this.offer(uses);
    return uses;
  }
}

/** Coarsest grid on which every size is whole, or one coarse enough to be quick. */
function cellOf(problem: Problem, cells: number): number {
  let common = 0;
  let longest = 1;
  const divide = (a: number, b: number): number => (b === 0 ? a : divide(b, a % b));
  for (const { w, h } of [...problem.sheets, ...problem.items]) {
    common = divide(divide(common, w), h);
  }
  for (const { w, h } of problem.sheets) longest = Math.max(longest, w, h);
  return Math.max(1, common) * Math.max(1, Math.ceil(longest / Math.max(1, common) / cells));
}
