/** Which sheets of a plan to keep when the rest is planned anew: some of them, the well filled ones rather than others. */
import { itemAt } from "../../units/certain.ts";
import type { CutPattern, Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";

/** Share of the sheets kept, and how far filling is disturbed: fitted on generated shop bills. */
const LEAST_KEPT = 0.3;
const KEPT_RANGE = 0.5;
const FILL_NOISE = 0.15;

export function keptSheets(problem: Problem, uses: readonly Use[], random: Random): Use[] {
  const noise = FILL_NOISE * random.unit();
  const ranked = uses
    .map((use) => ({ use, fill: fillOf(problem, use.pattern) * (1 + noise * (random.unit() - 0.5)) }))
    .sort((a, b) => b.fill - a.fill);
  const sheets = ranked.reduce((sum, { use }) => sum + use.repeats, 0);
  let left = Math.floor(sheets * (LEAST_KEPT + KEPT_RANGE * random.unit()));
  const kept: Use[] = [];
  for (const { use } of ranked) {
    const repeats = Math.min(use.repeats, left);
    if (repeats > 0) kept.push({ pattern: use.pattern, repeats });
    left -= repeats;
  }
  return kept;
}

function fillOf(problem: Problem, { sheet, items, counts }: CutPattern): number {
  let area = 0;
  for (let k = 0; k < items.length; k++) {
    const { w, h } = itemAt(problem.items, itemAt(items, k));
    area += itemAt(counts, k) * w * h;
  }
  return area / (itemAt(problem.sheets, sheet).w * itemAt(problem.sheets, sheet).h);
}
