/**
 * The cutting-stock relaxation: how often each pattern would be cut if halves of a sheet could be. Patterns are made on
 * demand by pricing strips with the demand rows' dual values (Gilmore & Gomory, Operations Research 13:94, 1965; memory,
 * unverified).
 */
import type { Budget } from "./budget.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { type Column, Simplex } from "./simplex.ts";
import type { StripPatterns } from "./strip-patterns.ts";

export interface Relaxation {
  /** Patterns with their levels, above zero. */
  readonly levels: { pattern: CutPattern; level: number }[];
  /** Valid for patterns of strips at the pricing's grid: cost of any plan for this demand is at least this. */
  readonly bound: number;
  readonly objective: number;
  readonly duals: Float64Array;
  readonly converged: boolean;
}

/** Share of the best duals so far in the values priced (Wentges 1997, Int. Trans. Oper. Res. 4:151; memory, unverified). */
const SMOOTHING = Number((globalThis as any).process?.env?.SM ?? 0.7);

export class ColumnGeneration {
  /** Every pattern ever made, shared by all demands. */
  readonly pool: CutPattern[] = [];
  private readonly known = new Set<string>();

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
  ) {}

  offer(pattern: CutPattern): boolean {
    const key = `${pattern.sheet}|${pattern.items.join()}|${pattern.counts.join()}`;
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.pool.push(pattern);
    return true;
  }

  /** Solves for what is left of the demand and of the stock, with at most `rounds` rounds of pricing. */
  solve(
    pricing: StripPatterns,
    remaining: Float64Array,
    supply: Float64Array,
    rounds: number,
    goodEnough = 0,
  ): Relaxation {
    const { problem, budget } = this;
    const { items, sheets } = problem;
    const rowOf = new Int32Array(items.length).fill(-1);
    const asked: number[] = [];
    for (let i = 0; i < items.length; i++) {
      if (remaining[i]! > 0) {
        rowOf[i] = asked.length;
        asked.push(i);
      }
    }
    const limited: number[] = [];
    const supplyRow = sheets.map((_, s) => (supply[s] === Infinity ? -1 : asked.length + limited.push(s) - 1));
    const dearest = Math.max(...sheets.map(({ cost }) => cost));
    const master = new Simplex(
      asked.map((i) => remaining[i]!),
      asked.map(() => dearest * 20),
      limited.map((s) => supply[s]!),
    );
    const own: CutPattern[] = [];
    const enter = (pattern: CutPattern) => {
      own.push(pattern);
      master.add(columnOf(pattern, problem, rowOf, supplyRow[pattern.sheet]!));
    };
    for (const pattern of this.pool) {
      if (fits(pattern, remaining, supply)) enter(pattern);
    }
    const values = new Float64Array(items.length);
    const centre = new Float64Array(items.length);
    let bound = 0;
    let converged = false;
    let smooth = goodEnough >= 0 ? SMOOTHING : 0;
    const over = () => budget.over();
    const worth = (s: number) => sheets[s]!.cost - (supplyRow[s]! >= 0 ? master.duals[supplyRow[s]!]! : 0) + 1e-7;
    for (let round = 0; ; round++) {
      const before = master.work;
      master.solve(over);
      budget.spend(master.work - before);
      if (round >= rounds || budget.over()) break;
      if (goodEnough > 0 && master.objective() - bound < goodEnough * bound) break;
      for (let r = 0; r < asked.length; r++) {
        const item = asked[r]!;
        const dual = Math.max(0, master.duals[r]!);
        values[item] = round === 0 ? dual : smooth * centre[item]! + (1 - smooth) * dual;
      }
      const workBefore = pricing.work;
      const priced = pricing.price(values, remaining, (s) => supply[s]! > 0, worth);
      budget.spend(pricing.work - workBefore);
      let stretch = 0;
      let entered = false;
      for (const { pattern, sheet, promised } of priced) {
        stretch = Math.max(stretch, promised / sheets[sheet]!.cost);
        if (!pattern) continue;
        const column = columnOf(pattern, problem, rowOf, supplyRow[pattern.sheet]!);
        if (master.reducedCost(column) < -1e-7 * column.cost && this.offer(pattern)) {
          enter(pattern);
          entered = true;
        }
      }
      let sum = 0;
      for (const item of asked) sum += values[item]! * remaining[item]!;
      const reached = stretch > 0 ? sum / stretch : 0;
      if (reached > bound) {
        bound = reached;
        for (const item of asked) centre[item] = values[item]! / stretch;
      }
      if (!entered) {
        if (smooth === 0) {
          converged = true;
          break;
        }
        smooth = 0;
      } else if (smooth < SMOOTHING) smooth = SMOOTHING;
    }
    const levels: Relaxation["levels"] = [];
    master.solution((column, level) => {
      levels.push({ pattern: own[column - master.firstOwn]!, level });
    });
    return { levels, bound, objective: master.objective(), duals: centre, converged };
  }
}

function fits(pattern: CutPattern, remaining: Float64Array, supply: Float64Array): boolean {
  if (supply[pattern.sheet]! < 1) return false;
  for (let k = 0; k < pattern.items.length; k++) if (pattern.counts[k]! > remaining[pattern.items[k]!]!) return false;
  return true;
}

function columnOf(pattern: CutPattern, problem: Problem, rowOf: Int32Array, supplyRow: number): Column {
  const extra = supplyRow >= 0 ? 1 : 0;
  const rows = new Int32Array(pattern.items.length + extra);
  const amounts = new Float64Array(pattern.items.length + extra);
  for (let k = 0; k < pattern.items.length; k++) {
    rows[k] = rowOf[pattern.items[k]!]!;
    amounts[k] = pattern.counts[k]!;
  }
  if (extra) {
    rows[pattern.items.length] = supplyRow;
    amounts[pattern.items.length] = 1;
  }
  return { cost: problem.sheets[pattern.sheet]!.cost, rows, amounts };
}
