/**
 * The search for a plan, best plan so far at any time: one pattern after another first, again with corrected values a few
 * times, then ruin and recreate on a cheaper set of sheets, as long as the budget lasts and the bound is not reached.
 */
import { Budget } from "./budget.ts";
import { isUnlimited } from "./gauge-rule.ts";
import { GuillotineLayout } from "./guillotine-layout.ts";
import { InsertionSearch } from "./insertion.ts";
import { layoutOf, patternFrom } from "./layout-tree.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { sequentialPlan } from "./sequential.ts";
import { layoutCanBeSheared } from "./shear-check.ts";
import { cheaperSwaps, type Swap } from "./sheet-swaps.ts";
import { isBetter, type Solution, solutionOf, type Use } from "./solution.ts";
import { StripPatterns } from "./strip-patterns.ts";
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
const LEAST_KEPT = 0.3;
const KEPT_RANGE = 0.5;
/** How far sheet costs and filling are disturbed, so that plans differ. */
const COST_NOISE = 0.02;
const FILL_NOISE = 0.15;
/** Rounds of one run of insertion, sheets taken together (up to twice as many), and how often all are. */
const ROUNDS = 20_000;
const SHEETS_AT_ONCE = 6;
const WHOLE_BILL_SHARE = 0.3;
/** A higher power picks the roomiest swaps more often. */
const SWAP_POWER = 3;
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
    this.demand = Float64Array.from(problem.items, ({ quantity }) => quantity);
    this.supply = Float64Array.from(problem.sheets, ({ available }) => available);
  }

  private offer(uses: readonly Use[]): boolean {
    const solution = solutionOf(this.problem, uses);
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
        last = this.planRest(pricing, budget, n < fullPlans ? [] : this.wellFilled(), values, COST_NOISE);
      }
    };
    if (!this.done) {
      if (mixed) correct(FIRST_WORK_MIXED, FULL_PLANS_MIXED);
      else correct(FIRST_WORK, FULL_PLANS);
    }
    while (!this.done) {
      if (this.best!.missing > 0) this.insertMissing();
      else this.insertCheaper();
      correct(LATER_WORK, this.random.below(2));
    }
  }

  /** Keeps some sheets and plans the rest of the demand one pattern after another. */
  private planRest(
    pricing: StripPatterns,
    budget: Budget,
    kept: readonly Use[],
    values: Float64Array,
    noise: number,
  ): Use[] {
    const { problem, random } = this;
    const costs = Float64Array.from(problem.sheets, ({ cost }) => cost * (1 + noise * (random.unit() - 0.5)));
    const remaining = this.demand.slice();
    const supply = this.supply.slice();
    for (const { pattern, repeats } of kept) {
      supply[pattern.sheet]! -= repeats;
      for (let k = 0; k < pattern.items.length; k++) remaining[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
    }
    const uses = [...kept, ...sequentialPlan(problem, pricing, remaining, supply, values, costs, budget)];
    this.offer(uses);
    return uses;
  }

  /** Some of the best plan's sheets, the well filled ones rather than others. */
  private wellFilled(): Use[] {
    const { problem, random } = this;
    const noise = FILL_NOISE * random.unit();
    const ranked = this.best!.uses.map((use) => ({
      use,
      fill: fillOf(problem, use.pattern) * (1 + noise * (random.unit() - 0.5)),
    })).sort((a, b) => b.fill - a.fill);
    const sheets = ranked.reduce((sum, { use }) => sum + use.repeats, 0);
    let left = Math.floor(sheets * (LEAST_KEPT + KEPT_RANGE * random.unit()));
    const kept: Use[] = [];
    for (const { use } of ranked) {
      const repeats = Math.min(use.repeats, left);
      if (repeats > 0) kept.push({ pattern: use.pattern, repeats });
      left -= repeats;
    }
    return kept;
  }

  private layoutsOfBest(): GuillotineLayout[] {
    const layouts: GuillotineLayout[] = [];
    for (const { pattern, repeats } of this.best!.uses) {
      for (let n = 0; n < repeats; n++) layouts.push(layoutOf(this.problem, pattern));
    }
    return layouts;
  }

  private newSearch(layouts: GuillotineLayout[]): InsertionSearch {
    const search = new InsertionSearch(this.problem, this.random, this.budget, 0.01, this.allowed);
    search.layouts = layouts;
    return search;
  }

  private offerLayouts(layouts: readonly GuillotineLayout[]): boolean {
    const uses: Use[] = [];
    for (const layout of layouts) {
      const pattern = patternFrom(layout);
      if (pattern) uses.push({ pattern, repeats: 1 });
    }
    return this.offer(uses);
  }

  /** The stock runs short: looks for room for what is left out on the sheets there are. */
  private insertMissing(): void {
    const search = this.newSearch(this.layoutsOfBest());
    const rest = this.demand.slice();
    for (const { pattern, repeats } of this.best!.uses) {
      for (let k = 0; k < pattern.items.length; k++) rest[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
    }
    for (let i = 0; i < rest.length; i++) for (let n = 0; n < rest[i]!; n++) search.waiting.push(i);
    search.run(ROUNDS, true);
    this.offerLayouts(search.bestLayouts);
  }

  /** Swaps some sheets, the badly filled ones first, for a cheaper set and looks for room for their pieces. */
  private insertCheaper(): void {
    const { problem, random } = this;
    const layouts = this.layoutsOfBest();
    const ranked = layouts
      .map((layout) => ({ layout, rank: (layout.area / (layout.w * layout.h)) * (1 + FILL_NOISE * random.unit()) }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ layout }) => layout);
    const few = Math.min(layouts.length, SHEETS_AT_ONCE + random.below(SHEETS_AT_ONCE));
    const share = random.unit() < WHOLE_BILL_SHARE ? layouts.length : few;
    const chosen = ranked.slice(0, share);
    const kept = ranked.slice(share);
    const counts = new Float64Array(problem.sheets.length);
    let pieceArea = 0;
    for (const layout of chosen) {
      counts[layout.sheet]!++;
      pieceArea += layout.area;
    }
    const used = counts.slice();
    for (const layout of kept) used[layout.sheet]!++;
    const swaps = cheaperSwaps(problem, counts, used, pieceArea);
    if (swaps.length === 0) return;
    // The roomiest swaps are the likeliest; now and then a bolder one.
    const pick = Math.floor(swaps.length * random.unit() ** SWAP_POWER);
    const search = this.newSearch(chosen);
    applySwap(problem, search, swaps[pick]!, random);
    if (search.runWhileClose(ROUNDS)) this.offerLayouts([...search.layouts, ...kept]);
  }
}

function fillOf(problem: Problem, { sheet, items, counts }: CutPattern): number {
  let area = 0;
  for (let k = 0; k < items.length; k++) {
    const { w, h } = problem.items[items[k]!]!;
    area += counts[k]! * w * h;
  }
  return area / (problem.sheets[sheet]!.w * problem.sheets[sheet]!.h);
}

function applySwap(problem: Problem, search: InsertionSearch, swap: Swap, random: Random): void {
  for (const kind of swap.away) {
    let emptiest = -1;
    search.layouts.forEach((layout, i) => {
      if (layout.sheet === kind && (emptiest < 0 || layout.area < search.layouts[emptiest]!.area)) emptiest = i;
    });
    const [gone] = search.layouts.splice(emptiest, 1);
    gone!.eachPiece((item) => search.waiting.push(item >> 1));
  }
  for (const kind of swap.instead) {
    const { w, h, roots } = problem.sheets[kind]!;
    const layout = new GuillotineLayout();
    layout.start(kind, w, h, roots[random.below(roots.length)]!);
    search.layouts.push(layout);
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
