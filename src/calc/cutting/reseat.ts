/**
 * Every pattern on the kind of sheet that counts least with it: a smaller one, or, where left-overs are worth something, a
 * larger one whose left-over goes back on the rack.
 */
import { itemAt, missing } from "../../units/certain.ts";
import { eachPiece } from "./cut-tree.ts";
import type { CutPattern, Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { canBeSheared, sizeOf } from "./shear-check.ts";

export function reseat(problem: Problem, uses: readonly Use[], counts: (pattern: CutPattern) => number): Use[] {
  const left = Float64Array.from(problem.sheets, ({ available }) => available);
  for (const { pattern, repeats } of uses) left[pattern.sheet] = (left[pattern.sheet] ?? missing()) - repeats;
  return uses.map((use) => {
    const { pattern, repeats } = use;
    let best = pattern;
    let least = counts(pattern);
    for (let sheet = 0; sheet < problem.sheets.length; sheet++) {
      if (sheet === pattern.sheet || itemAt(left, sheet) < repeats || !fits(problem, pattern, sheet)) continue;
      const other = { ...pattern, sheet };
      const cost = counts(other);
      if (cost >= least * (1 - 1e-9) || !canBeSheared(problem, other)) continue;
      best = other;
      least = cost;
    }
    left[pattern.sheet] = (left[pattern.sheet] ?? missing()) + repeats;
    left[best.sheet] = (left[best.sheet] ?? missing()) - repeats;
    return best === pattern ? use : { pattern: best, repeats };
  });
}

function fits(problem: Problem, { root }: CutPattern, sheet: number): boolean {
  const { w, h } = itemAt(problem.sheets, sheet);
  const [x, y] = sizeOf(problem, root);
  if (x > w || y > h) return false;
  let may = true;
  eachPiece(root, ({ item, turned }) => {
    may &&= itemAt(turned ? problem.turned : problem.plain, sheet)[item] === 1;
  });
  return may;
}
