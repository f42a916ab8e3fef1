/** The search behind a plan: what can be cut at all, the patterns found for it, what they count and what is left out. */
import { itemAt } from "../../units/certain.ts";
import { Budget } from "./budget.ts";
import { buildProblem, costOf, moneyRate } from "./build-problem.ts";
import { DEFAULT_PACE } from "./floor-time.ts";
import { impossibleReasons } from "./impossible.ts";
import { areaBound } from "./lower-bound.ts";
import { takeOff, type Use } from "./pattern.ts";
import { pinnedUses } from "./pins.ts";
import { PlanSearch } from "./plan-search.ts";
import type { Problem } from "./problem.ts";
import type { Solution } from "./solution.ts";
import type { Blank, LeftOut, Limits, Plan, PlanOptions, Stock } from "./types.ts";

/** About a second of work on a small machine (fitted on generated shop bills). */
export const DEFAULT_UNITS = 200_000_000;
const DEFAULT_SEED = 1;

export interface SearchedPlan {
  readonly problem: Problem;
  /** One line a part; `item` of a pattern counts these. */
  readonly asked: readonly Blank[];
  readonly uses: readonly Use[];
  /** Other complete plans near the best one, what seems the best of them first; none where something is left out. */
  readonly near: readonly (readonly Use[])[];
  readonly leftOut: LeftOut[];
  /** Area of the pieces planned, in square grid units. */
  readonly planned: number;
  /** What a list of patterns counts, without time. */
  readonly costOf: (sheet: number) => number;
  readonly countOf: (uses: readonly Use[]) => number;
  readonly bound: number;
  readonly stopReason: Plan["stopReason"];
}

/** `priced` are the sheets as they are bought, where `stock` is only what of them can be used. */
export function searchPlan(
  lines: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  options: PlanOptions,
  priced: readonly Stock[] = stock,
): SearchedPlan {
  const blanks = oneLineAPart(lines);
  const reasons = impossibleReasons(blanks, stock, limits, options);
  const asked = blanks.map((blank, i) => (reasons[i] === null ? blank : { ...blank, quantity: 0 }));
  const leftOut: LeftOut[] = blanks.flatMap(({ id, quantity }, i) =>
    reasons[i] === null || quantity === 0 ? [] : [{ blank: id, count: quantity, reason: reasons[i] as string }],
  );
  const pins = pinnedUses(buildProblem(asked, stock, limits, options), asked, stock);
  const problem = buildProblem(lessPins(asked, pins), stock.map(unpinned), limits, options);
  const areaOf = (count: (i: number) => number) =>
    problem.items.reduce((sum, { w, h }, i) => sum + w * h * count(i), 0);
  const pieceArea = areaOf((i) => itemAt(problem.items, i).quantity);
  const budget = new Budget(options.units ?? DEFAULT_UNITS, options.stop);
  const search = new PlanSearch(problem, budget, areaBound(problem, pieceArea), {
    seed: options.seed ?? DEFAULT_SEED,
    found: ({ uses }) => {
      options.onBetter?.(uses.reduce((sum, { repeats }) => sum + repeats, 0));
    },
    perSecond: (options.perMinute ?? 0) / SECONDS_PER_MINUTE,
    stroke: (options.pace ?? DEFAULT_PACE).stroke,
  });
  if (pieceArea > 0) search.run();
  const inOrder = (list: readonly Use[]) => [...pins, ...list].sort(byDue(asked));
  const searched = (search.best?.missing === 0 ? search.near[0] : search.best)?.uses ?? [];
  const short = problem.items.map(({ quantity }) => quantity);
  takeOff(searched, short);
  short.forEach((count, i) => {
    if (count > 0) leftOut.push({ blank: itemAt(blanks, i).id, count, reason: "the stock on hand does not suffice" });
  });
  const planned = areaOf((i) => itemAt(asked, i).quantity - itemAt(short, i));
  const money = moneyRate(priced, options);
  const costOfSheet = (sheet: number) => (options.least === "sheets" ? 1 : costOf(itemAt(priced, sheet), money));
  const countOf = (list: readonly Use[]) =>
    list.reduce((sum, { pattern, repeats }) => sum + repeats * costOfSheet(pattern.sheet), 0);
  const left = areaOf((i) => itemAt(problem.items, i).quantity - itemAt(short, i));
  const least = short.some((count) => count > 0) ? areaBound(problem, left) : search.bound;
  return {
    problem,
    asked,
    uses: inOrder(searched),
    near: search.best?.missing === 0 ? likeliest(search.near).map(inOrder) : [],
    leftOut,
    planned,
    costOf: costOfSheet,
    countOf,
    bound: countOf(pins) + (options.least === "sheets" ? least : boundOf(least, problem, priced, money)),
    stopReason: search.proved || pieceArea === 0 ? "bound" : budget.ended === "time" ? "time" : "units",
  };
}

/** Putting cuts in order takes time: only the plans that seem to be the best with it are tried. */
const MOST_TRIED = 4;
const SECONDS_PER_MINUTE = 60; // by definition

const likeliest = ([, ...others]: readonly Solution[]): (readonly Use[])[] =>
  others.slice(0, MOST_TRIED).map(({ uses }) => uses);

/** Sheets with the earliest parts first, then those of one stock line together, the most repeated first. */
const byDue = (asked: readonly Blank[]) => {
  const earliest = ({ pattern }: Use) =>
    Math.min(...[...pattern.items].map((item) => itemAt(asked, item).due ?? Infinity));
  return (a: Use, b: Use): number => {
    const [first, second] = [earliest(a), earliest(b)];
    if (first !== second) return first - second;
    return a.pattern.sheet - b.pattern.sheet || b.repeats - a.repeats;
  };
};

/** The search counts a little for an offcut that is free: all of that is taken off, so that the bound is one of true prices. */
function boundOf(searched: number, problem: Problem, priced: readonly Stock[], money: number | null): number {
  let most = 0;
  problem.sheets.forEach(({ cost, available }, s) => {
    const more = cost - costOf(itemAt(priced, s), money);
    if (more > 1e-9 * cost) most += more * available;
  });
  return Math.max(0, searched - (Number.isFinite(most) ? most : searched));
}

/** What a pin takes is neither asked for nor on stock any more. */
function lessPins(asked: readonly Blank[], pins: readonly Use[]): readonly Blank[] {
  if (pins.length === 0) return asked;
  const left = asked.map(({ quantity }) => quantity);
  takeOff(pins, left);
  return asked.map((blank, i) => ({ ...blank, quantity: itemAt(left, i) }));
}

const unpinned = (sheet: Stock): Stock => (sheet.pinned ? { ...sheet, quantity: 0 } : sheet);

/** The same part on two lines is one blank of which both are wanted. */
function oneLineAPart(blanks: readonly Blank[]): Blank[] {
  const parts = new Map<string, Blank>();
  for (const blank of blanks) {
    const before = parts.get(blank.id);
    parts.set(blank.id, before ? together(before, blank) : blank);
  }
  return [...parts.values()];
}

function together(a: Blank, b: Blank): Blank {
  const due = Math.min(a.due ?? Infinity, b.due ?? Infinity);
  return { ...a, quantity: a.quantity + b.quantity, ...(due < Infinity ? { due } : {}) };
}
