/**
 * Which sheets to pull and every shear cut in order, for blanks in the numbers asked, near the least metal. The answer
 * depends on the input and the work units alone: the same on every machine, unless `options.stop` ends it earlier.
 * Throws a Refusal on input no plan can be made from; blanks that cannot be cut are named in `leftOut` with the limit
 * they break, and the rest is planned. Every plan is replayed before it is handed out.
 */
import { itemAt, missing } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import { costOf } from "./build-problem.ts";
import { checkInput } from "./check-input.ts";
import { type OrderedCuts, orderCuts, sheetParts } from "./cut-order.ts";
import type { Part } from "./cut-tasks.ts";
import { DEFAULT_PACE, minutesCounted } from "./floor-time.ts";
import { areaFromGrid } from "./grid.ts";
import type { Use } from "./pattern.ts";
import { patternIdOf } from "./pattern-id.ts";
import { replay } from "./replay.ts";
import { searchPlan } from "./search-plan.ts";
import { stackLimit } from "./stacks.ts";
import type { Blank, Limits, Plan, PlannedPattern, PlanOptions, Stock } from "./types.ts";

export { DEFAULT_UNITS } from "./search-plan.ts";

/** Ways to cut each pattern that are looked at between plans, and for the one that is taken: chosen. */
const FEW_TRIES = 1;
const TRIES = 16;

export function planCuts(
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  options: PlanOptions = {},
): Plan {
  checkInput(blanks, stock, limits);
  const found = searchPlan(blanks, stock, limits, options);
  const { problem, asked, leftOut, planned, bound, stopReason } = found;
  /** What the left-overs that are kept count: nothing where sheets are only counted. */
  const creditOf = (patterns: readonly PlannedPattern[], remnants: Plan["remnants"]): number =>
    options.least === "sheets"
      ? 0
      : remnants.reduce((sum, { piece, w, h, count }) => {
          const pattern = patterns.find(({ id }) => id === patternIdOf(piece)) ?? missing();
          const sheet = stock.findIndex(({ id }) => id === pattern.stock);
          const worth = itemAt(stock, sheet).remnantWorth ?? limits.remnantWorth;
          return sum + (count * worth * w * h * found.costOf(sheet)) / (pattern.w * pattern.h);
        }, 0);
  const toOrder = { problem, blanks: asked, stock, limits, options };
  const listed = (uses: readonly Use[], tries: number, sheets?: readonly Part[]) => {
    const patterns = uses.map((use, p) => plannedPattern(use, p, asked, stock));
    const parts = sheets ?? sheetParts(patterns, toOrder);
    const ordered = orderCuts(patterns, parts, toOrder, tries);
    const remnants = remnantsOf(ordered.cuts);
    return {
      uses,
      patterns,
      parts,
      ordered,
      remnants,
      value: found.countOf(uses),
      credit: creditOf(patterns, remnants),
    };
  };
  // With the time counted in a plan of little more metal may be the better one; and so where the floor is too full for it.
  const perMinute = options.perMinute ?? 0;
  const best = listed(found.uses, FEW_TRIES);
  const isCrowded = ({ ordered }: typeof best) => crowded(ordered, limits).length > 0;
  const others = perMinute > 0 || isCrowded(best) ? found.near.map((uses) => listed(uses, FEW_TRIES)) : [];
  const roomy = [best, ...others].filter((choice) => !isCrowded(choice));
  const choices = roomy.length > 0 ? roomy : [best, ...others];
  const all = ({ value, credit, ordered }: typeof best) =>
    perMinute === Infinity
      ? ordered.minutes
      : value - credit + perMinute * minutesCounted(ordered, options.pace ?? DEFAULT_PACE);
  const { uses, parts } = choices.reduce((a, b) => (all(b) < all(a) ? b : a));
  const { patterns, ordered, remnants, value, credit } = listed(uses, TRIES, parts);
  const sheets = stock
    .map(({ id }, s) => ({
      stock: id,
      count: uses.reduce((sum, { pattern, repeats }) => sum + (pattern.sheet === s ? repeats : 0), 0),
    }))
    .filter(({ count }) => count > 0);
  const plan: Plan = {
    patterns,
    ...ordered,
    sheets,
    remnants,
    leftOut,
    blankArea: areaFromGrid(planned),
    sheetArea: uses.reduce(
      (sum, { pattern, repeats }) => sum + repeats * costOf(itemAt(stock, pattern.sheet), null),
      0,
    ),
    remnantArea: remnants.reduce((sum, { w, h, count }) => sum + w * h * count, 0),
    value,
    credit,
    bound,
    gap: bound > 0 ? value / bound - 1 : 0,
    stopReason,
    warnings: [
      ...(stopReason === "time" ? ["the search was cut short by time; another run may give another plan"] : []),
      ...crowded(ordered, limits),
    ],
  };
  // A floor that is too full is said and not refused: the parts can still be cut.
  const room = {
    stacks: Math.max(ordered.stacks, stackLimit(limits).all),
    longStacks: Math.max(ordered.longStacks, stackLimit(limits).long),
  };
  const faults = replay(plan, blanks, stock, { ...limits, ...room }, options.weightPerArea);
  if (faults.length > 0) throw new Refusal("#N/A", `cut plan must pass its replay; got ${faults[0]}`);
  return plan;
}

function plannedPattern(
  { pattern, repeats }: Use,
  index: number,
  asked: readonly Blank[],
  stock: readonly Stock[],
): PlannedPattern {
  const sheet = itemAt(stock, pattern.sheet);
  return {
    id: String(index + 1),
    stock: sheet.id,
    w: sheet.w,
    h: sheet.h,
    repeats,
    yields: [...pattern.items].map((item, k) => ({ blank: itemAt(asked, item).id, count: itemAt(pattern.counts, k) })),
    layout: pattern.root,
  };
}

function crowded({ stacks, longStacks }: OrderedCuts, limits: Limits): string[] {
  const { all, long } = stackLimit(limits);
  if (stacks <= all && longStacks <= long) return [];
  return [`${stacks} half-cut stacks stand at once, ${longStacks} of them long; the floor takes ${all} and ${long}`];
}

function remnantsOf(cuts: Plan["cuts"]): Plan["remnants"] {
  return cuts.flatMap(({ falls, stays, copies }) =>
    [...falls, stays]
      .filter(({ kind }) => kind === "remnant")
      .map(({ id, w, h }) => ({ piece: id, w, h, count: copies })),
  );
}
