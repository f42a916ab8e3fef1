/** The name in a list that is closest to what was typed, by edit distance. For hints only. */
export function nearest(given: string, names: readonly string[]): string {
  const folded = given.slice(0, 80).toLowerCase();
  let best = names[0] ?? "";
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of names) {
    const distance = editDistance(folded, name.toLowerCase());
    // Of several that are as near the first by name, whatever the order they stand in.
    if (distance < bestDistance || (distance === bestDistance && name < best)) [best, bestDistance] = [name, distance];
  }
  return best;
}

/** `nearest is "Pace"` where one is so near that it was most likely meant: a far one sends the reader astray. */
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
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++)
      current[j] = Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    previous = current;
  }
  return previous[b.length]!;
}
