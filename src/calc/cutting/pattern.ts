/** A pattern: one sheet kind, its layout, and how many of each item it yields. */
import { type CutNode, eachPiece, isPiece, type PartsNode } from "./cut-tree.ts";

export interface CutPattern {
  readonly sheet: number;
  readonly root: PartsNode;
  /** Items on it, ascending, and how many of each. */
  readonly items: Int32Array;
  readonly counts: Float64Array;
}

export function patternOf(sheet: number, root: PartsNode): CutPattern {
  const counts = new Map<number, number>();
  eachPiece(root, ({ item }) => counts.set(item, (counts.get(item) ?? 0) + 1));
  const items = [...counts.keys()].sort((a, b) => a - b);
  return {
    sheet,
    root,
    items: Int32Array.from(items),
    counts: Float64Array.from(items, (item) => counts.get(item) as number),
  };
}

/** Takes pieces off until none is above `allowed`; null when nothing is left. */
export function trimmedTo(pattern: CutPattern, allowed: ArrayLike<number>): CutPattern | null {
  let over = false;
  for (let k = 0; k < pattern.items.length; k++) {
    if (pattern.counts[k]! > allowed[pattern.items[k]!]!) over = true;
  }
  if (!over) return pattern;
  const left = new Map<number, number>();
  const keep = (node: CutNode): CutNode | null => {
    if (isPiece(node)) {
      const rest = left.get(node.item) ?? allowed[node.item]!;
      if (rest < 1) return null;
      left.set(node.item, rest - 1);
      return node;
    }
    const parts = node.parts.map(keep).filter((part) => part !== null);
    return parts.length === 0 ? null : { direction: node.direction, parts };
  };
  const root = keep(pattern.root) as PartsNode | null;
  return root === null ? null : patternOf(pattern.sheet, root);
}

/** How often the pattern can be cut before one of its items is overrun. */
export function mostRepeats(pattern: CutPattern, remaining: ArrayLike<number>): number {
  let most = Infinity;
  for (let k = 0; k < pattern.items.length; k++) {
    most = Math.min(most, Math.floor(remaining[pattern.items[k]!]! / pattern.counts[k]!));
  }
  return most;
}
