/** The linear program over the patterns of a problem: enough of every piece, no more sheets than there are. */
import { itemAt } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { counted, type Generated, generateColumns } from "./column-generation.ts";
import { LinearProgram } from "./linear-program.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { StripPatterns } from "./strip-patterns.ts";

/** What a missing piece costs, in dearest sheets: chosen; no piece needs more than one. */
const PENALTY = 20;

export class PatternProgram {
  private readonly program: LinearProgram;
  private readonly patterns: CutPattern[] = [];
  private right: Float64Array<ArrayBuffer>;
  /** Row of each sheet's supply; -1 where it has no end. */
  private readonly supplyRow: number[];
  private readonly known = new Set<string>();

  constructor(
    private readonly problem: Problem,
    private budget: Budget,
    remaining: ArrayLike<number>,
    supply: ArrayLike<number>,
  ) {
    const items = problem.items.length;
    let rows = items;
    this.supplyRow = problem.sheets.map((_, s) => (itemAt(supply, s) < Infinity ? rows++ : -1));
    this.right = this.rightSide(remaining, supply);
    const dearest = Math.max(...problem.sheets.map(({ cost }) => cost));
    this.program = new LinearProgram(this.right, items, PENALTY * dearest);
  }

  /** From now on the work counts here. */
  spendFrom(budget: Budget): void {
    this.budget = budget;
  }

  private rightSide(remaining: ArrayLike<number>, supply: ArrayLike<number>): Float64Array<ArrayBuffer> {
    const limited = this.supplyRow.flatMap((row, s) => (row < 0 ? [] : [itemAt(supply, s)]));
    return Float64Array.from([...Array.from(this.problem.items, (_, i) => itemAt(remaining, i)), ...limited]);
  }

  add(pattern: CutPattern): boolean {
    const key = `${pattern.sheet}:${pattern.items.join()}:${pattern.counts.join()}`;
    if (this.known.has(key)) return false;
    this.known.add(key);
    const row = itemAt(this.supplyRow, pattern.sheet);
    const rows = row < 0 ? pattern.items : [...pattern.items, row];
    const gives = row < 0 ? pattern.counts : [...pattern.counts, 1];
    this.program.add(rows, gives, itemAt(this.problem.sheets, pattern.sheet).cost);
    this.patterns.push(pattern);
    return true;
  }

  /** Pieces and sheets still to be planned. */
  change(remaining: ArrayLike<number>, supply: ArrayLike<number>): void {
    this.right = this.rightSide(remaining, supply);
    this.program.change(this.right, counted(this.program, this.budget));
  }

  /** The best mix of the patterns that are known. */
  solve(): void {
    this.program.solve(counted(this.program, this.budget));
  }

  /** Patterns in use and how often, the most used first. */
  inUse(): { readonly pattern: CutPattern; readonly amount: number }[] {
    const list: { pattern: CutPattern; amount: number }[] = [];
    this.program.each((column, amount) => {
      list.push({ pattern: itemAt(this.patterns, column - this.program.own), amount });
    });
    return list.sort((a, b) => b.amount - a.amount);
  }

  get cost(): number {
    return this.program.cost;
  }

  get prices(): Float64Array {
    return this.program.prices;
  }

  /** What a sheet of each kind costs at present, its scarcity included. */
  costs(prices = this.prices): Float64Array<ArrayBuffer> {
    return Float64Array.from(this.problem.sheets, ({ cost }, s) => {
      const row = itemAt(this.supplyRow, s);
      return row < 0 ? cost : cost + Math.max(0, -itemAt(prices, row));
    });
  }

  /** Prices patterns for what remains until none saves; `relaxed` patterns may overrun the demand, so that the bound is one. */
  generate(
    pricing: StripPatterns,
    remaining: ArrayLike<number>,
    supply: ArrayLike<number>,
    rounds?: number,
    enough?: (bound: number, cost: number) => boolean,
  ): Generated {
    const price = (prices: Float64Array) => {
      const { patterns, ratio } = pricing.saving(prices, remaining, (s) => itemAt(supply, s) >= 1, this.costs(prices));
      return { ratio, add: () => patterns.filter((pattern) => this.add(pattern)).length };
    };
    const least = this.problem.items.length;
    return generateColumns(this.program, this.right, least, price, this.budget, rounds, enough);
  }
}
