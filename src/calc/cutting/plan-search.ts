/**
 * The search for a plan, best plan so far at any time: one pattern after another first, again with corrected values a few
 * times, then ruin and recreate on a cheaper set of sheets, as long as the budget lasts and the bound is not reached.
 */
import { itemAt } from "../../units/certain.ts";
import { Budget } from "./budget.ts";
import { cellOf } from "./cell-of.ts";
import { dive } from "./dive.ts";
import { isUnlimited } from "./gauge-rule.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { InsertionMoves } from "./insertion-moves.ts";
import { keptSheets } from "./kept-sheets.ts";
import { boundOfBars, roundedUp } from "./lower-bound.ts";
import { withNear } from "./near-plans.ts";
import { type CutPattern, takeOff, type Use } from "./pattern.ts";
import { PatternProgram } from "./pattern-program.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { netCost } from "./remnants.ts";
import { reseat } from "./reseat.ts";
import { sequentialPlan } from "./sequential.ts";
import { layoutCanBeSheared } from "./shear-check.ts";
import { isBetter, type Solution, solutionOf } from "./solution.ts";
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
const THRIFT = 0.03;
const THRIFT_SHEETS = 18;
/** Pieces of one item stacked across a strip where a third stage is allowed. */
const MOST_STACKED = 3;
/** Longest side of a sheet in cells of the strip tables. */
const CELLS = 1200;
const CELLS_MIXED = 2000;
const FIRST_CELLS = 300;

/** Longest side in cells where a bound is wanted: finer than any published instance. */
const CELLS_EXACT = 4000;
/** Work on corrected plans before the linear program; shares of the budget for it and for the bound of bars, and how often a dive is made. */
const FIRST_WORK_EXACT = 10_000_000;
const ROOT_SHARE = 0.45;
const BOUND_SHARE = 0.08;
const MOST_BOUND_WORK = 12_000_000;
/** Last sheets of a dive that are looked at again together. */
const LAST_SHEETS = [6, 10, 16] as const;
const DIVE_SHARE = 0.5;

/** Plans made to be compared by time, the share of the budget they may take, and how much dearer a cut to size is in some: chosen. */
const ALTERNATIVES = 8;
const ALTERNATIVES_SHARE = 0.2;
const DEAR = 4;
interface Root {
  readonly program: PatternProgram;
  readonly pricing: StripPatterns;
}

interface Asked {
  readonly seed: number;
  readonly found: (solution: Solution) => void;
  /** What a second at the shear counts; Infinity: nothing but it. And how many seconds a stroke takes. */
  readonly perSecond: number;
  readonly stroke: number;
}

export class PlanSearch {
  best: Solution | null = null;
  private readonly random: Random;
  private readonly allowed: ((layout: GuillotineLayout) => boolean) | null;
  private readonly demand: Float64Array;
  private readonly supply: Float64Array;
  private readonly moves: InsertionMoves;
  private readonly thrift: number;
  private readonly timed: boolean;

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    /** No plan costs less; raised while the search goes on. */
    public bound: number,
    private readonly asked: Asked,
  ) {
    this.random = new Random(asked.seed);
    this.timed = asked.perSecond > 0;
    this.allowed =
      isUnlimited(problem.rule) && problem.sheets.every(({ trimPartLimit }) => trimPartLimit === Infinity)
        ? null
        : (layout) => layoutCanBeSheared(problem, layout);
    const cheapest = Math.min(...problem.sheets.map(({ cost }) => cost));
    this.thrift = (this.timed || problem.rule.reach < Infinity) && bound < THRIFT_SHEETS * cheapest ? THRIFT : 0;
    this.demand = Float64Array.from(problem.items, ({ quantity }) => quantity);
    this.supply = Float64Array.from(problem.sheets, ({ available }) => available);
    this.moves = new InsertionMoves(problem, budget, this.random, this.allowed);
  }

  /** What the stroke that sizes a piece counts, in the value of pieces. */
  private get sizing(): number {
    const { perSecond, stroke } = this.asked;
    const perArea = Math.min(...this.problem.sheets.map(({ cost, w, h }) => cost / (w * h)));
    return this.timed ? (perSecond * stroke) / perArea : 0;
  }

  private offer(uses: readonly Use[]): boolean {
    this.budget.spend(OFFER_WORK);
    const counted = this.timed ? "seconds" : this.thrift > 0 ? "gauges" : "patterns";
    const seated = (counts: (pattern: CutPattern) => number) =>
      solutionOf(this.problem, reseat(this.problem, uses, counts), counted);
    const solution = seated(({ sheet }) => itemAt(this.problem.sheets, sheet).cost);
    // The search goes by the sheets; where left-overs are worth something a larger one may be the cheaper in the end.
    if (solution.missing === 0 && this.problem.sheets.some(({ remnantWorth }) => remnantWorth > 0))
      this.near = withNear(
        this.near,
        seated((pattern) => netCost(this.problem, pattern)),
        this.asked.perSecond,
      );
    if (solution.missing === 0) this.near = withNear(this.near, solution, this.asked.perSecond);
    if (!isBetter(solution, this.best)) return false;
    this.best = solution;
    this.asked.found(solution);
    return true;
  }

  /** Complete plans that count little more than the best one: with the time at the shear one of them may be the better. */
  near: readonly Solution[] = [];

  get proved(): boolean {
    return this.best !== null && this.best.missing === 0 && this.best.cost <= this.bound * (1 + 1e-9);
  }

  private get done(): boolean {
    return this.budget.over() || this.proved;
  }

  run(): void {
    const { problem, budget } = this;
    const mixed = problem.sheets.length > 1;
    const stacked = problem.stages > 2 ? MOST_STACKED : 1;
    // The first plan is made on a coarse grid and to the end, whatever the budget: it is the one there always is.
    const whole = new Budget(Number.POSITIVE_INFINITY);
    const coarse = new StripPatterns(problem, whole, cellOf(problem, FIRST_CELLS), this.allowed);
    const pricing = new StripPatterns(
      problem,
      budget,
      cellOf(problem, mixed ? CELLS_MIXED : CELLS),
      this.allowed,
      { mostStacked: stacked, keepToDemand: mixed, sizing: this.sizing }, // fitted: better with several kinds of sheet, a little worse with one
    );
    const weights = new Float64Array(problem.items.length).fill(1);
    const worth = Float64Array.from(problem.items, ({ value }) => value);
    let last = this.planRest(coarse, whole, [], worth, 0);
    budget.spend(whole.used);
    // Time tells apart plans of equal sheets: there must be some. Every other one has hardly a cut to size.
    const simple = new StripPatterns(problem, budget, cellOf(problem, CELLS), this.allowed, {
      mostStacked: stacked,
      keepToDemand: true,
      sizing: DEAR * this.sizing,
    });
    const until = budget.used + budget.units * ALTERNATIVES_SHARE;
    for (let n = 0; this.timed && n < ALTERNATIVES && budget.used < until && !budget.over(); n++) {
      const values = n === 0 ? worth : correctedValues(problem, last, weights, this.random);
      last = this.planRest(n % 2 === 0 ? pricing : simple, budget, [], values, n === 0 ? 0 : COST_NOISE);
    }
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
    const exact = problem.stages === 2 && isUnlimited(problem.rule);
    if (!this.done) {
      if (exact) correct(FIRST_WORK_EXACT, 2);
      else this.boundByBars();
    }
    const program = exact && !this.done ? this.rootProgram() : null;
    if (!this.done) {
      if (mixed) correct(FIRST_WORK_MIXED, FULL_PLANS_MIXED);
      else correct(FIRST_WORK, FULL_PLANS);
    }
    if (program && !this.done) this.diveFrom(program, [], false);
    while (!this.done) {
      const { missing, uses } = this.best!;
      const moved = missing > 0 ? this.moves.insertMissing(uses) : this.moves.insertCheaper(uses);
      if (moved) this.offer(moved);
      if (program && !this.done && this.random.unit() < DIVE_SHARE) {
        this.diveFrom(program, keptSheets(problem, this.best!.uses, this.random), true);
      }
      correct(LATER_WORK, this.random.below(2));
    }
  }

  private boundByBars(): void {
    const part = this.budget.share(Math.min(MOST_BOUND_WORK, this.budget.units * BOUND_SHARE));
    this.bound = Math.max(this.bound, boundOfBars(this.problem, part, this.bound));
    this.budget.spend(part.used);
  }

  /** The linear program over all patterns of two levels, solved as far as half the budget goes; its bound is kept. */
  private rootProgram(): Root {
    const { problem, budget } = this;
    const part = budget.share(budget.units * ROOT_SHARE);
    const program = new PatternProgram(problem, part, this.demand, this.supply);
    for (const { pattern } of this.best!.uses) program.add(pattern);
    const pricing = new StripPatterns(problem, part, cellOf(problem, CELLS_EXACT), this.allowed);
    // Once the bound is reached; otherwise good columns are worth more than the time.
    const enough = (low: number) => this.best!.missing === 0 && this.best!.cost <= roundedUp(problem, low) * (1 + 1e-9);
    const { bound } = program.generate(pricing, this.demand, this.supply, Infinity, enough);
    this.bound = Math.max(this.bound, roundedUp(problem, bound));
    budget.spend(part.used);
    program.spendFrom(budget);
    return { program, pricing: new StripPatterns(problem, budget, cellOf(problem, CELLS_EXACT), this.allowed) };
  }

  /** Dives for what `kept` leaves over; what is left at the end goes one pattern after another. */
  private diveFrom({ program, pricing }: Root, kept: readonly Use[], noise: boolean): void {
    const remaining = this.demand.slice();
    const supply = this.supply.slice();
    takeOff(kept, remaining, supply);
    program.change(remaining, supply);
    const dived = dive(program, pricing, remaining, supply, this.budget, this.random, noise);
    const uses = [...kept, ...dived];
    const worth = Float64Array.from(this.problem.items, ({ value }) => value);
    const costs = Float64Array.from(this.problem.sheets, ({ cost }) => cost);
    uses.push(...sequentialPlan(this.problem, pricing, remaining, supply, worth, costs, this.budget));
    this.offer(uses);
    for (const count of LAST_SHEETS) {
      const sheets = uses.reduce((sum, { repeats }) => sum + repeats, 0);
      if (this.done || count > sheets) return;
      const moved = this.moves.insertCheaperLast(uses, count);
      if (moved) {
        this.offer(moved);
        return;
      }
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
    takeOff(kept, remaining, supply);
    const uses = [...kept];
    const thrift = noise > 0 ? this.thrift : 0;
    if (tight && this.best?.missing === 0) {
      const mix = tightMix(problem, this.best.uses, kept, remaining, supply, costs, random);
      for (let s = 0; s < mix.length; s++) supply[s]! -= itemAt(mix, s);
      uses.push(...sequentialPlan(problem, pricing, remaining, mix, values, costs, budget, thrift, kept));
      for (let s = 0; s < mix.length; s++) supply[s]! += itemAt(mix, s);
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
