/**
 * Which sheets to pull and every shear cut in order, for blanks in the numbers asked, near the least metal. The answer
 * depends on the input and the work units alone: the same on every machine, unless `options.stop` ends it earlier.
 * Throws a Refusal on input no plan can be made from; blanks that cannot be cut are named in `leftOut` with the limit
 * they break, and the rest is planned. Every plan is replayed before it is handed out.
 */
import { Refusal } from "../../units/refusal.ts";
import { Budget } from "./budget.ts";
import { buildProblem, costOf, countsMoney } from "./build-problem.ts";
import { checkInput } from "./check-input.ts";
import { orderCuts } from "./cut-order.ts";
import { areaFromGrid } from "./grid.ts";
import { impossibleReasons } from "./impossible.ts";
import { areaBound } from "./lower-bound.ts";
import { PlanSearch } from "./plan-search.ts";
import { replay } from "./replay.ts";
import type { Blank, LeftOut, Limits, Plan, PlannedPattern, PlanOptions, Stock } from "./types.ts";

/** About a second of work on a small machine (fitted on generated shop bills). */
export const DEFAULT_UNITS = 200_000_000;
const DEFAULT_SEED = 1;

export function planCuts(
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  options: PlanOptions = {},
): Plan {
  checkInput(blanks, stock, limits);
  const reasons = impossibleReasons(blanks, stock, limits, options);
  const asked = blanks.map((blank, i) => (reasons[i] === null ? blank : { ...blank, quantity: 0 }));
  const leftOut: LeftOut[] = blanks.flatMap(({ id, quantity }, i) =>
    reasons[i] === null || quantity === 0 ? [] : [{ blank: id, count: quantity, reason: reasons[i] as string }],
  );
  const problem = buildProblem(asked, stock, limits, options);
  const pieceArea = problem.items.reduce((sum, { w, h, quantity }) => sum + w * h * quantity, 0);
  const budget = new Budget(options.units ?? DEFAULT_UNITS, options.stop);
  const target = areaBound(problem, pieceArea);
  const search = new PlanSearch(problem, budget, target, options.seed ?? DEFAULT_SEED, ({ uses }) => {
    options.onBetter?.(uses.reduce((sum, { repeats }) => sum + repeats, 0));
  });
  if (pieceArea > 0) search.run();
  const uses = [...(search.best?.uses ?? [])].sort(
    (a, b) => a.pattern.sheet - b.pattern.sheet || b.repeats - a.repeats,
  );
  const patterns = uses.map(({ pattern, repeats }, p): PlannedPattern => {
    const sheet = stock[pattern.sheet]!;
    return {
      id: String(p + 1),
      stock: sheet.id,
      w: sheet.w,
      h: sheet.h,
      repeats,
      yields: [...pattern.items].map((item, k) => ({ blank: blanks[item]!.id, count: pattern.counts[k]! })),
      layout: pattern.root,
    };
  });
  const short = stillMissing(
    problem.items.map(({ quantity }) => quantity),
    uses,
  );
  short.forEach((count, i) => {
    if (count > 0) leftOut.push({ blank: blanks[i]!.id, count, reason: "the stock on hand does not suffice" });
  });
  const ordered = orderCuts(patterns, problem, blanks, stock, limits);
  const planned = problem.items.reduce((sum, { w, h, quantity }, i) => sum + w * h * (quantity - short[i]!), 0);
  const money = countsMoney(stock, options);
  const value = uses.reduce((sum, { pattern, repeats }) => sum + repeats * costOf(stock[pattern.sheet]!, money), 0);
  const bound = short.some((count) => count > 0) ? areaBound(problem, planned) : search.bound;
  const sheets = stock
    .map(({ id }, s) => ({
      stock: id,
      count: uses.reduce((sum, { pattern, repeats }) => sum + (pattern.sheet === s ? repeats : 0), 0),
    }))
    .filter(({ count }) => count > 0);
  const remnants = remnantsOf(ordered.cuts);
  const stopReason = search.proved || pieceArea === 0 ? "bound" : budget.ended === "time" ? "time" : "units";
  const plan: Plan = {
    patterns,
    ...ordered,
    sheets,
    remnants,
    leftOut,
    blankArea: areaFromGrid(planned),
    sheetArea: uses.reduce((sum, { pattern, repeats }) => sum + repeats * costOf(stock[pattern.sheet]!, false), 0),
    remnantArea: remnants.reduce((sum, { w, h, count }) => sum + w * h * count, 0),
    value,
    bound,
    gap: bound > 0 ? value / bound - 1 : 0,
    stopReason,
    warnings: stopReason === "time" ? ["the search was cut short by time; another run may give another plan"] : [],
  };
  const faults = replay(plan, blanks, stock, limits);
  if (faults.length > 0) throw new Refusal("#N/A", `cut plan must pass its replay; got ${faults[0]}`);
  return plan;
}

function stillMissing(
  demand: readonly number[],
  uses: readonly { pattern: { items: Int32Array; counts: Float64Array }; repeats: number }[],
): number[] {
  const rest = [...demand];
  for (const { pattern, repeats } of uses) {
    for (let k = 0; k < pattern.items.length; k++) rest[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
  }
  return rest;
}

function remnantsOf(cuts: Plan["cuts"]): Plan["remnants"] {
  return cuts.flatMap(({ falls, stays, copies }) =>
    [...falls, stays]
      .filter(({ kind }) => kind === "remnant")
      .map(({ id, w, h }) => ({ piece: id, w, h, count: copies })),
  );
}
