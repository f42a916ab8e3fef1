/** Plans one instance with a clock beside it, and checks the plan by replay. */

import { type Blank, type Limits, NO_LIMITS, planCuts, replay, type Stock } from "../../../calc/cutting/index.ts";
import { itemAt } from "../../../units/certain.ts";
import { mm } from "../../../units/quantity.ts";
import { processorTime, timeIsUp } from "./clock.ts";
import type { Instance } from "./instances.ts";

export interface Row {
  readonly file: string;
  readonly name: string;
  readonly group: string | null;
  readonly problem: Instance["problem"];
  readonly sheets: number;
  readonly value: number;
  readonly bound: number;
  readonly published: number | null;
  readonly gap: number;
  readonly proved: boolean;
  readonly valid: boolean;
  readonly over_production: number;
  readonly first_plan_ms: number;
  readonly seconds: number;
  readonly patterns: number;
  readonly stop: "bound" | "units" | "time";
}

/** More than any machine does; the clock ends the search. The search shares out its work by it. */
const MOST_UNITS_A_SECOND = 300_000_000;
/** The order of the cuts and the replay come after the search, and count too (chosen). */
const SEARCH_SHARE = 0.95;
/** Any depth of cuts. */
const ANY_STAGES = 99;

export function runInstance(instance: Instance, published: number | null, seconds: number, stages = 2): Row {
  const { problem, w, h } = instance;
  const knapsack = problem === "knapsack";
  const blanks = instance.items.map(
    (row, k): Blank => ({
      id: String(k + 1),
      w: mm(itemAt(row, 0)),
      h: mm(itemAt(row, 1)),
      quantity: itemAt(row, 2),
      grain: problem === "2bp-R" ? "free" : "along",
      ...(knapsack ? { value: itemAt(row, 3) } : {}),
    }),
  );
  const stock: Stock[] = [
    {
      id: "sheet",
      w: mm(w),
      h: mm(h),
      quantity: knapsack ? 1 : Infinity,
      price: null,
      grain: "w",
      trim: mm(0),
      remnant: false,
    },
  ];
  const strips = problem === "csp" || problem === "large";
  const limits: Limits = { ...NO_LIMITS, stages: problem === "csp" ? stages : strips ? 2 : ANY_STAGES };
  const start = processorTime();
  let first: number | null = null;
  const plan = planCuts(blanks, stock, limits, {
    units: seconds * MOST_UNITS_A_SECOND,
    firstCut: problem === "csp" ? "along w" : "any",
    stop: timeIsUp(seconds * 1000 * SEARCH_SHARE),
    onBetter: () => {
      first ??= processorTime() - start;
    },
  });
  const took = (processorTime() - start) / 1000;
  const sheets = plan.sheets.reduce((sum, { count }) => sum + count, 0);
  const made = new Map<string, number>();
  for (const { repeats, yields } of plan.patterns) {
    for (const { blank, count } of yields) made.set(blank, (made.get(blank) ?? 0) + count * repeats);
  }
  const over = blanks.reduce((sum, { id, quantity }) => sum + Math.max(0, (made.get(id) ?? 0) - quantity), 0);
  const firstCuts = plan.cuts.filter(({ stage }) => stage === "strip");
  const valid =
    replay(plan, blanks, stock, limits).length === 0 &&
    (knapsack || plan.leftOut.length === 0) &&
    (problem !== "csp" || firstCuts.every(({ axis }) => axis === "h"));
  const value = knapsack ? blanks.reduce((sum, { id, value }) => sum + (made.get(id) ?? 0) * (value ?? 0), 0) : sheets;
  const bound = knapsack ? mostValue(blanks, w * h) : Math.round(plan.bound / (w * h));
  return {
    file: instance.file,
    name: instance.name,
    group: instance.group,
    problem,
    sheets,
    value,
    bound,
    published,
    gap: bound > 0 ? (knapsack ? 1 - value / bound : value / bound - 1) : 0,
    proved: value === bound,
    valid,
    over_production: over,
    first_plan_ms: first ?? took * 1000,
    seconds: took,
    patterns: plan.patterns.length,
    stop: plan.stopReason,
  };
}

/** No filling of one sheet is worth more than its area at the best values per area. */
function mostValue(blanks: readonly Blank[], area: number): number {
  const lines = blanks.map(({ w, h, quantity, value }) => ({ area: w * h, quantity, value: value ?? 0 }));
  lines.sort((a, b) => b.value / b.area - a.value / a.area);
  let left = area;
  let sum = 0;
  for (const line of lines) {
    const take = Math.min(line.quantity, left / line.area);
    sum += take * line.value;
    left -= take * line.area;
  }
  return Math.floor(sum + 1e-6);
}
