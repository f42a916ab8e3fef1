/** A set of patterns with repeats, and what it leaves out. Solutions are compared here and nowhere else. */
import { type CutNode, isPiece } from "./cut-tree.ts";
import { gaugesOf } from "./gauges.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { netCost } from "./remnants.ts";

export interface Use {
  readonly pattern: CutPattern;
  readonly repeats: number;
}

export interface Solution {
  readonly uses: readonly Use[];
  readonly cost: number;
  /** Cost less what usable left-overs are worth. */
  readonly net: number;
  /** Value of the pieces left out. */
  readonly missing: number;
  /** Area on the sheet with the least on it, in twentieths of that sheet: a small one leaves the largest remnant. */
  readonly emptiest: number;
  /** Distinct gauges, worked out when asked for; 0 where they do not count. */
  readonly gauges: () => number;
}

/** Steps of filling that are told apart: chosen, so that a hair's breadth of remnant does not count. */
const FILL_STEPS = 20;

/** With `thrifty` the gauges count where all else is equal. */
export function solutionOf(problem: Problem, uses: readonly Use[], thrifty = false): Solution {
  const remaining = Float64Array.from(problem.items, ({ quantity }) => quantity);
  let cost = 0;
  let net = 0;
  for (const { pattern, repeats } of uses) {
    for (let k = 0; k < pattern.items.length; k++) remaining[pattern.items[k]!]! -= repeats * pattern.counts[k]!;
    cost += repeats * problem.sheets[pattern.sheet]!.cost;
    net += repeats * netCost(problem, pattern);
  }
  let missing = 0;
  problem.items.forEach(({ value }, i) => {
    missing += value * remaining[i]!;
  });
  let emptiest = FILL_STEPS;
  for (const { pattern } of uses) {
    const { w, h } = problem.sheets[pattern.sheet]!;
    let area = 0;
    for (let k = 0; k < pattern.items.length; k++) {
      const item = problem.items[pattern.items[k]!]!;
      area += pattern.counts[k]! * item.w * item.h;
    }
    emptiest = Math.min(emptiest, Math.ceil((FILL_STEPS * area) / (w * h)));
  }
  const merged = mergeEqual(uses);
  let known = -1;
  const gauges = () => {
    if (known < 0)
      known = thrifty
        ? gaugesOf(
            problem,
            merged.map(({ pattern }) => pattern),
          ).size
        : 0;
    return known;
  };
  return { uses: merged, cost, net, missing, emptiest, gauges };
}

/** Equal layouts become one pattern with more repeats. */
function mergeEqual(uses: readonly Use[]): Use[] {
  const merged = new Map<string, Use>();
  for (const { pattern, repeats } of uses) {
    const key = `${pattern.sheet}${nodeKey(pattern.root)}`;
    const before = merged.get(key);
    merged.set(key, { pattern, repeats: repeats + (before?.repeats ?? 0) });
  }
  return [...merged.values()];
}

/** The same for layouts that differ only in the order of parts. */
function nodeKey(node: CutNode): string {
  if (isPiece(node)) return `${node.item}${node.turned ? "t" : ""}`;
  return `${node.direction === 0 ? "x" : "y"}(${node.parts.map(nodeKey).sort().join()})`;
}

/** Fewer pieces left out, then less metal net of usable left-overs, then the larger remnant, then fewer patterns and gauges. */
export function isBetter(a: Solution, b: Solution | null): boolean {
  if (!b) return true;
  if (Math.abs(a.missing - b.missing) > 1e-6) return a.missing < b.missing;
  if (Math.abs(a.net - b.net) > 1e-6) return a.net < b.net;
  if (a.emptiest !== b.emptiest) return a.emptiest < b.emptiest;
  return a.uses.length + a.gauges() < b.uses.length + b.gauges();
}
