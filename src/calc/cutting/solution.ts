/** A set of patterns with repeats, and what it leaves out. Solutions are compared here and nowhere else. */
import { itemAt } from "../../units/certain.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import { gaugesOf } from "./gauges.ts";
import { takeOff, type Use } from "./pattern.ts";
import { workOf } from "./pattern-work.ts";
import type { Problem } from "./problem.ts";
import { netCost } from "./remnants.ts";

export interface Solution {
  readonly uses: readonly Use[];
  readonly cost: number;
  /** Cost less what usable left-overs are worth. */
  readonly net: number;
  /** Value of the pieces left out. */
  readonly missing: number;
  /** Area on the sheet with the least on it, in twentieths of that sheet: a small one leaves the largest remnant. */
  readonly emptiest: number;
  /** What tells equal plans apart, the least first, worked out when asked for: see Effort. */
  readonly effort: () => number;
}

/** Steps of filling that are told apart: chosen, so that a hair's breadth of remnant does not count. */
const FILL_STEPS = 20;

/** Patterns alone, patterns and their gauges, or about how many seconds they take at the shear. */
export type Effort = "patterns" | "gauges" | "seconds";

export function solutionOf(problem: Problem, uses: readonly Use[], counted: Effort = "patterns"): Solution {
  const remaining = Float64Array.from(problem.items, ({ quantity }) => quantity);
  takeOff(uses, remaining);
  let cost = 0;
  let net = 0;
  for (const { pattern, repeats } of uses) {
    cost += repeats * itemAt(problem.sheets, pattern.sheet).cost;
    net += repeats * netCost(problem, pattern);
  }
  let missing = 0;
  problem.items.forEach(({ value }, i) => {
    missing += value * itemAt(remaining, i);
  });
  let emptiest = FILL_STEPS;
  for (const { pattern } of uses) {
    const { w, h } = itemAt(problem.sheets, pattern.sheet);
    let area = 0;
    for (let k = 0; k < pattern.items.length; k++) {
      const item = itemAt(problem.items, itemAt(pattern.items, k));
      area += itemAt(pattern.counts, k) * item.w * item.h;
    }
    emptiest = Math.min(emptiest, Math.ceil((FILL_STEPS * area) / (w * h)));
  }
  const merged = mergeEqual(uses);
  let known = -1;
  const effort = () => {
    if (known < 0) known = effortOf(problem, merged, counted);
    return known;
  };
  return { uses: merged, cost, net, missing, emptiest, effort };
}

function effortOf(problem: Problem, uses: readonly Use[], counted: Effort): number {
  if (counted === "seconds") return workOf(problem, uses);
  const patterns = uses.map(({ pattern }) => pattern);
  return uses.length + (counted === "gauges" ? gaugesOf(problem, patterns).size : 0);
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

/** Fewer pieces left out, then cheaper sheets, then the larger remnant, then less effort. */
export function isBetter(a: Solution, b: Solution | null): boolean {
  if (!b) return true;
  if (Math.abs(a.missing - b.missing) > 1e-6) return a.missing < b.missing;
  if (Math.abs(a.cost - b.cost) > 1e-6) return a.cost < b.cost;
  if (a.emptiest !== b.emptiest) return a.emptiest < b.emptiest;
  return a.effort() < b.effort();
}
