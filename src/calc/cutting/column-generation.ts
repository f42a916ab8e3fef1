/**
 * Brings columns into a linear program until none would save anything (Gilmore & Gomory, Operations Research 9:849, 1961;
 * memory, unverified), and says after every round what no plan can cost less than: prices scaled down until no column is
 * worth more than its cost are a bound (Farley, Operations Research 38:922, 1990; memory, unverified).
 */
import { missing } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import type { LinearProgram } from "./linear-program.ts";

export interface PricedColumns {
  /** Adds the columns that save; answers how many. */
  readonly add: () => number;
  /** The most that any column is worth, in shares of its cost. */
  readonly ratio: number;
}

/** How much the prices of the best bound count: fitted on published instances. */
const HELD = 0.8;
/** Closer than this share the bound does not grow any more to speak of: chosen. */
const CLOSE = 1e-7;

export interface Generated {
  /** No plan costs less. */
  readonly bound: number;
  /** The program at its best; not where the budget or the rounds ended before. */
  readonly complete: boolean;
}

/** `enough` says that a bound is as good as it can be made by rounding, so that the rest need not be worked out. */
export function generateColumns(
  program: LinearProgram,
  right: ArrayLike<number>,
  least: number,
  price: (prices: Float64Array) => PricedColumns,
  budget: Budget,
  rounds = Infinity,
  enough: (bound: number, cost: number) => boolean = () => false,
): Generated {
  let bound = 0;
  const over = counted(program, budget);
  const center = new Float64Array(right.length);
  const asked = new Float64Array(right.length);
  let last = Infinity;
  for (let round = 0; round < rounds && !over(); round++) {
    program.solve(over);
    const { prices, cost } = program;
    // Prices between those of the best bound so far and the present ones swing less; if they bring nothing, the present ones.
    const held = bound > 0 && cost < last * (1 - CLOSE) ? HELD : 0;
    last = cost;
    for (let r = 0; r < right.length; r++)
      asked[r] = held * (center[r] ?? missing()) + (1 - held) * (prices[r] ?? missing());
    const { add, ratio } = price(asked);
    if (over()) break;
    let wanted = 0;
    let granted = 0;
    for (let r = 0; r < right.length; r++) {
      if (r < least) wanted += (asked[r] ?? missing()) * (right[r] ?? missing());
      else if ((asked[r] ?? missing()) < 0) granted += (asked[r] ?? missing()) * (right[r] ?? missing());
    }
    const reached = ratio > 0 ? wanted / Math.max(1, ratio) + granted : 0;
    if (reached > bound) {
      bound = reached;
      for (let r = 0; r < right.length; r++) center[r] = (asked[r] ?? missing()) / (r < least ? Math.max(1, ratio) : 1);
    }
    const added = add();
    if (held === 0 && (ratio <= 1 + CLOSE || added === 0)) return { bound, complete: ratio <= 1 + CLOSE };
    if (enough(bound, cost)) return { bound, complete: false };
  }
  return { bound, complete: false };
}

/** Whether the budget is over, with what the program has done since counted in. */
export function counted(program: LinearProgram, budget: Budget): () => boolean {
  let before = program.work;
  return () => {
    budget.spend((program.work - before) * WORK_PER_ENTRY);
    before = program.work;
    return budget.over();
  };
}

/** An entry of a column takes about as long as this many places insertion looks at (fitted). */
const WORK_PER_ENTRY = 0.5;
