/**
 * Sheets for the pieces not yet on any, with less room than the best plan has: a plan that fits on them is the better one.
 * Left to itself the search picks the sheet it can fill best each time and often ends on one it hardly uses.
 */

import { itemAt } from "../../units/certain.ts";
import type { Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";
import { cheapestMix } from "./sheet-mix.ts";

/** Share of the best plan's spare room that is left: fitted on generated shop bills. */
const LEAST_ROOM = 0.6;
const MOST_ROOM = 0.9;

/** How many sheets of each kind; none at all where the supply does not suffice. */
export function tightMix(
  problem: Problem,
  best: readonly Use[],
  kept: readonly Use[],
  remaining: ArrayLike<number>,
  supply: ArrayLike<number>,
  costs: ArrayLike<number>,
  random: Random,
): Float64Array {
  const areaOf = (uses: readonly Use[]) =>
    uses.reduce((sum, { pattern, repeats }) => {
      const { w, h } = itemAt(problem.sheets, pattern.sheet);
      return sum + repeats * w * h;
    }, 0);
  const pieces = problem.items.reduce((sum, { w, h }, i) => sum + w * h * itemAt(remaining, i), 0);
  const spare = Math.max(0, areaOf(best) - areaOf(kept) - pieces);
  const share = LEAST_ROOM + (MOST_ROOM - LEAST_ROOM) * random.unit();
  return cheapestMix(problem, pieces + spare * share, supply, costs).counts;
}
