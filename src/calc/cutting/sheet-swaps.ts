/** Ways to a cheaper set of sheets: one or two sheets less, none to two others instead. */
import { firstOf, itemAt } from "../../units/certain.ts";
import type { Problem } from "./problem.ts";

export interface Swap {
  /** Sheet kinds taken away and put in their place. */
  readonly away: readonly number[];
  readonly instead: readonly number[];
  /** Usable area left over after the swap. */
  readonly slack: number;
}

/**
 * Every swap of sheets among `counts` that leaves room for pieces of `pieceArea`; `used` counts all sheets of the plan.
 * Each costs less and keeps to the stock; the roomiest first.
 */
export function cheaperSwaps(
  problem: Problem,
  counts: ArrayLike<number>,
  used: ArrayLike<number>,
  pieceArea: number,
): Swap[] {
  const kinds = problem.sheets.map((sheet, s) => ({ s, area: sheet.w * sheet.h, cost: sheet.cost }));
  const usable = kinds.filter(({ s }) => itemAt(problem.sheets, s).roots.length > 0);
  let slack = -pieceArea;
  for (const { s, area } of kinds) slack += itemAt(counts, s) * area;
  const single = (list: typeof kinds) => list.map((kind) => [kind]);
  const pairs = (list: typeof kinds) =>
    list.length > MOST_KINDS_IN_PAIRS ? [] : list.flatMap((a, i) => list.slice(i).map((b) => [a, b]));
  const present = kinds.filter(({ s }) => itemAt(counts, s) > 0);
  const away = [...single(present), ...pairs(present)];
  const instead = [[], ...single(usable), ...pairs(usable)];
  const swaps: Swap[] = [];
  const total = (list: readonly { cost: number; area: number }[], what: "cost" | "area") =>
    list.reduce((sum, kind) => sum + kind[what], 0);
  for (const a of away) {
    if (a.length === 2 && a[0] === a[1] && itemAt(counts, firstOf(a).s) < 2) continue;
    for (const b of instead) {
      if (b.some((kind) => a.includes(kind))) continue;
      if (total(b, "cost") >= total(a, "cost") * (1 - 1e-9)) continue;
      const left = slack - total(a, "area") + total(b, "area");
      if (
        left < 0 ||
        b.some(({ s }) => itemAt(used, s) + b.filter((k) => k.s === s).length > itemAt(problem.sheets, s).available)
      ) {
        continue;
      }
      swaps.push({ away: a.map(({ s }) => s), instead: b.map(({ s }) => s), slack: left });
    }
  }
  return swaps.sort((a, b) => b.slack - a.slack);
}

/** Pairs of many kinds would be thousands of swaps. */
const MOST_KINDS_IN_PAIRS = 8;
