/**
 * The search for a plan, best plan so far at any time: one pattern after another first, again with corrected values a few
 * times, then ruin and recreate on a cheaper set of sheets, as long as the budget lasts and the bound is not reached.
 */
import type { Budget } from "./budget.ts";
import { isUnlimited } from "./gauge-rule.ts";
import { GuillotineLayout } from "./guillotine-layout.ts";
import { InsertionSearch } from "./insertion.ts";
import { layoutOf, patternFrom } from "./layout-tree.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { sequentialPlan } from "./sequential.ts";
import { layoutCanBeSheared } from "./shear-check.ts";
import { cheaperSwaps, type Swap } from "./sheet-swaps.ts";
import { isBetter, type Solution, solutionOf, type Use } from "./solution.ts";
import { StripPatterns } from "./strip-patterns.ts";
import { correctedValues } from "./value-correction.ts";

/** Work spent on corrected plans before and between the runs of ruin and recreate. */
const CORRECTION_WORK = 60_000_000;
const MOST_CORRECTIONS = 12;
const ROUNDS = 20_000;
/** Longest side of a sheet in cells of the strip tables. */
const CELLS = 1200;

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
    const { problem, budget } = this;
    const pricing = new StripPatterns(problem, cellOf(problem), this.allowed);
    let values = Float64Array.from(problem.items, ({ w, h }) => w * h);
    let last = sequentialPlan(problem, pricing, this.demand.slice(), this.supply.slice(), values, budget);
    this.offer(last);
    const weights = new Float64Array(problem.items.length).fill(1);
    for (;;) {
      const until = budget.used + CORRECTION_WORK;
      for (let n = 0; n < MOST_CORRECTIONS && budget.used < until && !this.done; n++) {
        values = correctedValues(problem, last, weights, this.random);
        last = sequentialPlan(problem, pricing, this.demand.slice(), this.supply.slice(), values, budget);
        this.offer(last);
      }
      if (this.done) return;
      if (this.best!.missing > 0) this.insertMissing();
      else this.insertCheaper();
      if (this.done) return;
    }
  }

  private layoutsOfBest(): GuillotineLayout[] {
    const layouts: GuillotineLayout[] = [];
    for (const { pattern, repeats } of this.best!.uses) {
      for (let n = 0; n < repeats; n++) layouts.push(layoutOf(this.problem, pattern));
    }
    return layouts;
  }

  private newSearch(): InsertionSearch {
    const search = new InsertionSearch(this.problem, this.random, this.budget, 0.01, this.allowed);
    search.layouts = this.layoutsOfBest();
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
    const { problem } = this;
    const search = this.newSearch();
    const rest = this.demand.slice();
    for (const { pattern, repeats } of this.best!.uses) {
      for (let k = 0; k < pattern.items.length; k++) rest[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
    }
    for (let i = 0; i < rest.length; i++) for (let n = 0; n < rest[i]!; n++) search.waiting.push(i);
    search.run(ROUNDS, true);
    this.offerLayouts(search.bestLayouts);
  }

  /** Swaps sheets for a cheaper set and looks for room for their pieces. */
  private insertCheaper(): void {
    const { problem, random } = this;
    let rounds = ROUNDS;
    const counts = new Float64Array(problem.sheets.length);
    let pieceArea = 0;
    problem.items.forEach(({ w, h, quantity }) => {
      pieceArea += w * h * quantity;
    });
    counts.fill(0);
    for (const { pattern, repeats } of this.best!.uses) counts[pattern.sheet]! += repeats;
    const swaps = cheaperSwaps(problem, counts, pieceArea);
    if (swaps.length === 0) return;
    if (problem.sheets.length > 1) rounds = 4000;
    // The roomiest swaps are the likeliest; now and then a bolder one.
    const pick = Math.floor(swaps.length * random.unit() ** 2);
    const search = this.newSearch();
    applySwap(problem, search, swaps[pick]!, random);
    if (search.run(rounds)) this.offerLayouts(search.layouts);
  }
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
function cellOf(problem: Problem): number {
  let common = 0;
  let longest = 1;
  const divide = (a: number, b: number): number => (b === 0 ? a : divide(b, a % b));
  for (const { w, h } of [...problem.sheets, ...problem.items]) {
    common = divide(divide(common, w), h);
  }
  for (const { w, h } of problem.sheets) longest = Math.max(longest, w, h);
  return Math.max(1, common) * Math.max(1, Math.ceil(longest / Math.max(1, common) / CELLS));
}
