/** The name a misspelt one most likely meant: least edits (Levenshtein 1966), at most a third of its length. */
export function nearestName(wanted: string, names: readonly string[]): string | undefined {
  const target = wanted.toUpperCase();
  let best: string | undefined;
  let least = Math.max(1, Math.floor(target.length / 3)) + 1;
  for (const name of names) {
    if (Math.abs(name.length - target.length) >= least) continue;
    const distance = edits(target, name.toUpperCase());
    if (distance < least) {
      least = distance;
      best = name;
    }
  }
  return best;
}

function edits(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      current.push(Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + change));
    }
    previous = current;
  }
  return previous[b.length]!;
}
