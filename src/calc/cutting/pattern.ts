/** A pattern: one sheet kind, its layout, and how many of each item it yields. */
import { missing } from "../../units/certain.ts";
import { eachPiece, type PartsNode } from "./cut-tree.ts";

export interface CutPattern {
  readonly sheet: number;
  readonly root: PartsNode;
  /** Items on it, ascending, and how many of each. */
  readonly items: Int32Array;
  readonly counts: Float64Array;
}

/** A pattern and on how many sheets it is cut. */
export interface Use {
  readonly pattern: CutPattern;
  readonly repeats: number;
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

type Counts = { [index: number]: number };

/** Takes what the patterns give off the pieces that remain, and their sheets off the supply where that is counted. */
export function takeOff(uses: readonly Use[], remaining: Counts, supply?: Counts): void {
  for (const { pattern, repeats } of uses) {
    if (supply) supply[pattern.sheet] = (supply[pattern.sheet] ?? missing()) - repeats;
    for (let k = 0; k < pattern.items.length; k++) {
      const item = pattern.items[k] ?? missing();
      remaining[item] = (remaining[item] ?? missing()) - repeats * (pattern.counts[k] ?? missing());
    }
  }
}

/** How often the pattern can be cut before one of its items is overrun. */
export function mostRepeats(pattern: CutPattern, remaining: ArrayLike<number>): number {
  let most = Infinity;
  for (let k = 0; k < pattern.items.length; k++) {
    const left = remaining[pattern.items[k] ?? missing()] ?? missing();
    most = Math.min(most, Math.floor(left / (pattern.counts[k] ?? missing())));
  }
  return most;
}
