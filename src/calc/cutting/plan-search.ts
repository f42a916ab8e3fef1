/**
 * The search for a plan, best plan so far at any time: one pattern after another first, again with corrected values a few
 * times, then ruin and recreate on a cheaper set of sheets, as long as the budget lasts and the bound is not reached.
 */
import { itemAt, missing } from "../../units/certain.ts";
import { Budget } from "./budget.ts";
import { cellOf } from "./cell-of.ts";
import { dive } from "./dive.ts";
import { isUnlimited } from "./gauge-rule.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { Harvest } from "./harvest.ts";
import { InsertionMoves } from "./insertion-moves.ts";
import { keptSheets } from "./kept-sheets.ts";
import { boundOfBars, roundedUp } from "./lower-bound.ts";
import { withNear } from "./near-plans.ts";
import { type CutPattern, takeOff, type Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { netCost } from "./remnants.ts";
import { reseat } from "./reseat.ts";
import { type Root, rootProgram } from "./root-program.ts";
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

/** Work on corrected plans before the linear program; the share of the budget for the bound of bars, and how often a dive is made. */
const FIRST_WORK_EXACT = 10_000_000;
const BOUND_SHARE = 0.08;
const MOST_BOUND_WORK = 12_000_000;
/** Last sheets of a dive that are looked at again together. */
const LAST_SHEETS = [6, 10, 16] as const;
const DIVE_SHARE = 0.5;
/** Layouts come by anew before a plan is made of them all, and dives for it. */
const FRESH = 1000;
const COVERS = 2;

/** Plans made to be compared by time, the share of the budget they may take, and how much dearer a cut to size is in some: chosen. */
const ALTERNATIVES = 8;
const ALTERNATIVES_SHARE = 0.2;
const DEAR = 4;
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
  private readonly harvest: Harvest | null;
  private readonly thrift: number;
  private readonly timed: boolean;
  /** Two levels of cuts without limits: a linear program prices every pattern there is. */
  private readonly exact: boolean;

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    /** No plan costs less; raised while the search goes on. */
    public bound: number,
    private readonly asked: Asked,
  ) {
    this.random = new Random(asked.seed);
    this.timed = asked.perSecond > 0;
    this.exact = problem.stages === 2 && isUnlimited(problem.rule);
    this.allowed =
      isUnlimited(problem.rule) && problem.sheets.every(({ trimPartLimit }) => trimPartLimit === Infinity)
        ? null
        : (layout) => layoutCanBeSheared(problem, layout);
    const cheapest = Math.min(...problem.sheets.map(({ cost }) => cost));
    this.thrift = (this.timed || problem.rule.reach < Infinity) && bound < THRIFT_SHEETS * cheapest ? THRIFT : 0;
    this.demand = Float64Array.from(problem.items, ({ quantity }) => quantity);
    this.supply = Float64Array.from(problem.sheets, ({ available }) => available);
    this.harvest = this.exact || this.timed ? null : new Harvest(problem);
    this.moves = new InsertionMoves(problem, budget, this.random, this.allowed, this.harvest);
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
            : this.planRest(pricing, budget, this.kept(), values, COST_NOISE, mixed);
      }
    };
    if (!this.done) {
      if (this.exact) correct(FIRST_WORK_EXACT, 2);
      else this.boundByBars();
    }
    const program = this.exact && !this.done ? this.rootOf() : null;
    if (program && !this.done) this.diveFrom(program, [], false);
    if (!this.done) {
      if (mixed) correct(FIRST_WORK_MIXED, FULL_PLANS_MIXED);
      else correct(FIRST_WORK, FULL_PLANS);
    }
    while (!this.done) {
      const best = this.best ?? missing();
      const moved = best.missing > 0 ? this.moves.insertMissing(best.uses) : this.moves.insertCheaper(best.uses);
      if (moved) this.offer(moved);
      if (program && !this.done && this.random.unit() < DIVE_SHARE) {
        this.diveFrom(program, this.kept(), true);
      }
      if (this.harvest && !this.done && this.harvest.fresh > FRESH) this.cover(this.harvest, pricing);
      correct(LATER_WORK, this.random.below(2));
    }
  }

  private kept(): Use[] {
    return keptSheets(this.problem, (this.best ?? missing()).uses, this.random);
  }

  /** Plans of layouts that insertion came by, where these could make a cheaper one. */
  private cover(harvest: Harvest, pricing: StripPatterns): void {
    const program = harvest.program((this.best ?? missing()).uses, this.demand, this.supply, this.budget);
    for (let n = 0; n < COVERS && !this.done; n++) {
      if (roundedUp(this.problem, program.cost) >= (this.best ?? missing()).cost * (1 - 1e-9)) return;
      this.diveFrom({ program, pricing, anew: false }, [], n > 0);
      program.change(this.demand, this.supply);
      program.solve();
    }
  }

  private rootOf(): Root {
    const { root, bound } = rootProgram(this.problem, this.budget, this.best ?? missing(), this.allowed);
    this.bound = Math.max(this.bound, bound);
    return root;
  }

  private boundByBars(): void {
    const part = this.budget.share(Math.min(MOST_BOUND_WORK, this.budget.units * BOUND_SHARE));
    this.bound = Math.max(this.bound, boundOfBars(this.problem, part, this.bound));
    this.budget.spend(part.used);
  }

  /** Dives for what `kept` leaves over; what is left at the end goes one pattern after another. */
  private diveFrom({ program, pricing, anew }: Root, kept: readonly Use[], noise: boolean): void {
    const remaining = this.demand.slice();
    const supply = this.supply.slice();
    takeOff(kept, remaining, supply);
    program.change(remaining, supply);
    const dived = dive(program, anew ? pricing : null, remaining, supply, this.budget, this.random, noise);
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
      for (let s = 0; s < mix.length; s++) supply[s] = (supply[s] ?? missing()) - itemAt(mix, s);
      uses.push(...sequentialPlan(problem, pricing, remaining, mix, values, costs, budget, thrift, kept));
      for (let s = 0; s < mix.length; s++) supply[s] = (supply[s] ?? missing()) + itemAt(mix, s);
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
