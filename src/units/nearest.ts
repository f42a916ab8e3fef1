/** The name in a list that is closest to what was typed, by edit distance. For hints only. */
import { lastOf } from "./certain.ts";
export function nearest(given: string, names: readonly string[]): string {
  const folded = given.slice(0, 80).toLowerCase();
  let best = names[0] ?? "";
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of names) {
    const distance = editDistance(folded, name.toLowerCase());
    // Among equally near names the first in alphabetical order, whatever the list's order.
    if (distance < bestDistance || (distance === bestDistance && name < best)) [best, bestDistance] = [name, distance];
  }
  return best;
}

/** `nearest is "Pace"` where one is near enough to be what was meant: a distant one would mislead the reader. */
export function nearestIs(given: string, names: readonly string[]): string | undefined {
  const typed = given.slice(0, 80).toLowerCase();
  const begun = typed.length < 3 ? undefined : names.find((name) => name.toLowerCase().startsWith(typed));
  const best = begun ?? nearest(given, names);
  // Chosen: a slip in three letters, or two letters that changed places in a short word.
  const slips = editDistance(typed, best.toLowerCase());
  const sameLetters = slips === 2 && [...typed].sort().join("") === [...best.toLowerCase()].sort().join("");
  const isNear = sameLetters || slips * 3 <= Math.max(typed.length, best.length);
  return best !== "" && (begun || isNear) ? `nearest is "${best}"` : undefined;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    let [diagonal, left] = [0, 0];
    row = row.map((above, j) => {
      const change = diagonal + (a[i - 1] === b[j - 1] ? 0 : 1);
      left = j === 0 ? i : Math.min(above + 1, left + 1, change);
      diagonal = above;
      return left;
    });
  }
  return lastOf(row);
}
