/**
 * Layouts that ruin and recreate came by, whatever became of them. A linear program over them says whether together they
 * could make a plan cheaper than the best one, and a dive makes it (set covering over layouts gathered by a search: Monaci &
 * Toth, INFORMS J. Computing 18:71, 2006; memory, unverified).
 */
import { itemAt, missing } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { type GuillotineLayout, ITEM, STRIDE } from "./guillotine-layout.ts";
import { patternFrom } from "./layout-tree.ts";
import type { CutPattern, Use } from "./pattern.ts";
import { PatternProgram } from "./pattern-program.ts";
import type { Problem } from "./problem.ts";
import { Random } from "./random.ts";

/** Layouts kept at most; of more only the better half goes on: fitted on published bin-packing instances. */
const MOST = 4000;
/** Marks are whole numbers below this: sums of a sheet's full of them are exact. */
const MARKS = 2 ** 32;

export class Harvest {
  private patterns: CutPattern[] = [];
  /** Sums of marks of the layouts taken so far. */
  private readonly known = new Set<number>();
  /** A number drawn for each piece; their sum tells one set of pieces from another. */
  private readonly marks: Float64Array;
  /** Layouts taken since a program was last made of them. */
  fresh = 0;

  constructor(private readonly problem: Problem) {
    const random = new Random(problem.items.length);
    this.marks = Float64Array.from(problem.items, () => random.below(MARKS));
  }

  /** Keeps what the layout gives, if no layout gave the same before. */
  take(layout: GuillotineLayout): void {
    const { data, slots, sheet } = layout;
    let sum = sheet;
    for (let at = ITEM; at < slots * STRIDE; at += STRIDE) {
      const item = data[at] ?? missing();
      if (item >= 0) sum += this.marks[item >> 1] ?? missing();
    }
    if (this.known.has(sum)) return;
    this.known.add(sum);
    const pattern = patternFrom(layout);
    if (!pattern) return;
    this.patterns.push(pattern);
    this.fresh++;
  }

  /** The cheapest mix of the layouts and of what `best` uses; those that are farthest from being used are let go. */
  program(best: readonly Use[], demand: Float64Array, supply: Float64Array, budget: Budget): PatternProgram {
    this.fresh = 0;
    const program = new PatternProgram(this.problem, budget, demand, supply);
    for (const { pattern } of best) program.add(pattern);
    for (const pattern of this.patterns) program.add(pattern);
    program.solve();
    if (this.patterns.length > MOST) this.patterns = this.cheapest(program);
    return program;
  }

  private cheapest(program: PatternProgram): CutPattern[] {
    const costs = program.costs();
    const loss = ({ sheet, items, counts }: CutPattern) =>
      items.reduce((left, item, k) => left - itemAt(program.prices, item) * itemAt(counts, k), itemAt(costs, sheet));
    const ranked = this.patterns.map((pattern) => ({ pattern, rank: loss(pattern) }));
    ranked.sort((a, b) => a.rank - b.rank);
    return ranked.slice(0, MOST / 2).map(({ pattern }) => pattern);
  }
}
