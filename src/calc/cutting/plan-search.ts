/**
 * The search for a plan, best plan so far at any time: one pattern after another first, then the relaxation and the dive
 * from it, then ruin and recreate for a plan that costs less, as long as the budget lasts and the bound is not reached.
 */
import type { Budget } from "./budget.ts";
import { ColumnGeneration } from "./column-generation.ts";
import { dive } from "./dive.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { InsertionSearch } from "./insertion.ts";
import { layoutOf, patternFrom } from "./layout-tree.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";
import { sequentialPlan } from "./sequential.ts";
import { isBetter, type Solution, solutionOf, type Use } from "./solution.ts";
import { StripPatterns } from "./strip-patterns.ts";

export class PlanSearch {
  best: Solution | null = null;
  readonly log: string[] = [];

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    private readonly bound: number,
    seed: number,
    private readonly found: (solution: Solution) => void = () => {},
  ) {
    this.random = new Random(seed);
  }
  private readonly random: Random;

  private offer(uses: readonly Use[]): boolean {
    const solution = solutionOf(this.problem, uses);
    if (!isBetter(solution, this.best)) return false;
    this.best = solution;
    this.found(solution);
    return true;
  }

  get done(): boolean {
    return this.budget.over() || (this.best !== null && this.best.missing === 0 && this.best.cost <= this.bound + 1e-6);
  }

  run(cell: number): void {
    const { problem, budget } = this;
    const coarse = new StripPatterns(problem, cell, problem.stages > 2 ? 1 : 1);
    const demand = Float64Array.from(problem.items, ({ quantity }) => quantity);
    const supply = Float64Array.from(problem.sheets, ({ available }) => available);
    const areas = Float64Array.from(problem.items, ({ w, h }) => w * h);
    const first = sequentialPlan(problem, coarse, demand.slice(), supply.slice(), areas, budget);
    this.offer(first);
    this.log.push(`seq ${this.best!.cost} ${budget.used}`);
    if (this.done) return;
    this.correct(coarse, first);
    while (!this.done) this.insertLess();
  }

  /** Value correction: pieces of sheets that came out badly filled are worth more the next time. */
  private correct(pricing: StripPatterns, first: readonly Use[]): void {
    const { problem, budget, random } = this;
    const { items, sheets } = problem;
    const weight = new Float64Array(items.length).fill(1);
    let last = first;
    const start = budget.used;
    let n = 0;
    const t0 = performance.now();
    while (!this.done && performance.now() - t0 < Number(process.env.SVC ?? 300)) {
      n++;
      const seen = new Float64Array(items.length);
      const sum = new Float64Array(items.length);
      for (const { pattern, repeats } of last) {
        let used = 0;
        for (let k = 0; k < pattern.items.length; k++) {
          const { w, h } = items[pattern.items[k]!]!;
          used += pattern.counts[k]! * w * h;
        }
        const sheet = sheets[pattern.sheet]!;
        for (let k = 0; k < pattern.items.length; k++) {
          seen[pattern.items[k]!]! += repeats * pattern.counts[k]!;
          sum[pattern.items[k]!]! += (repeats * pattern.counts[k]! * sheet.w * sheet.h) / used;
        }
      }
      const gain = 0.3 + 0.4 * random.unit();
      const power = 1 + 0.08 * random.unit();
      const values = Float64Array.from(items, ({ w, h }, i) => {
        if (seen[i]! > 0) weight[i] = (1 - gain) * weight[i]! + gain * Math.min(3, sum[i]! / seen[i]!);
        return (w * h) ** power * weight[i]!;
      });
      const demand = Float64Array.from(items, ({ quantity }) => quantity);
      const supply = Float64Array.from(sheets, ({ available }) => available);
      last = sequentialPlan(problem, pricing, demand, supply, values, budget);
      if (this.offer(last)) this.log.push(`svc${n} ${this.best!.cost} ${budget.used - start}`);
    }
    this.log.push(`svc n=${n}`);
  }

  /** Takes the emptiest sheet away and looks for room for its pieces on the others. */
  private insertLess(): void {
    const { problem, budget, random } = this;
    const search = new InsertionSearch(problem, random, budget, 0.01);
    for (const { pattern, repeats } of this.best!.uses) {
      for (let n = 0; n < repeats; n++) search.layouts.push(layoutOf(problem, pattern));
    }
    search.dropEmptiest();
    for (;;) {
      const whole = search.run(20000);
      if (whole) {
        this.offer(search.layouts.map(patternUse).filter((use) => use !== null));
        this.log.push(`rr ${this.best!.cost} ${budget.used}`);
        if (this.done) return;
        search.dropEmptiest();
      } else if (this.done) return;
    }
  }
}

function patternUse(layout: GuillotineLayout): Use | null {
  const pattern = patternFrom(layout);
  return pattern && { pattern, repeats: 1 };
}
