import type { CellValue } from "../../units/cell.ts";
import { sameValue } from "../evaluate/compare.ts";
import type { Frame } from "../evaluate/frame.ts";

/** A lookup column: values by position from its top. */
export interface Vector {
  readonly length: number;
  at(index: number): CellValue;
  /** Names the cells behind it, so that an index of them can be reused within a run; undefined for arrays. */
  readonly key: string | undefined;
}

interface Seen {
  asked: number;
  index: Map<string | number | boolean, { first: number; last: number }> | undefined;
}

// Case does not count for text; a number and the text of it are different keys because their types differ.
const keyOf = (value: CellValue): string | number | boolean | undefined =>
  typeof value === "string"
    ? value.toLowerCase()
    : typeof value === "number" || typeof value === "boolean"
      ? value
      : undefined;

/** Ranges shorter than this are searched through. */
const WORTH_INDEXING = 32;

/**
 * Position of the first (or last) value that is exactly the wanted one, -1 if none. The second question about the same
 * range builds an index of it: 10,000 lookups into 10,000 rows are then 10,000 steps, not 100 million.
 */
export function exactPosition(frame: Frame, vector: Vector, wanted: CellValue, fromEnd = false): number {
  const key = keyOf(wanted);
  if (key !== undefined && vector.key !== undefined && vector.length >= WORTH_INDEXING) {
    const { memo } = frame.grid;
    let seen = memo.get(vector.key) as Seen | undefined;
    if (seen === undefined) {
      seen = { asked: 0, index: undefined };
      memo.set(vector.key, seen);
    }
    if (++seen.asked > 1) {
      seen.index ??= buildIndex(vector);
      const found = seen.index.get(key);
      return found === undefined ? -1 : fromEnd ? found.last : found.first;
    }
  }
  if (fromEnd) {
    for (let i = vector.length - 1; i >= 0; i--) if (sameValue(vector.at(i), wanted)) return i;
    return -1;
  }
  for (let i = 0; i < vector.length; i++) if (sameValue(vector.at(i), wanted)) return i;
  return -1;
}

function buildIndex(vector: Vector): NonNullable<Seen["index"]> {
  const index: NonNullable<Seen["index"]> = new Map();
  for (let i = 0; i < vector.length; i++) {
    const key = keyOf(vector.at(i));
    if (key === undefined) continue;
    const known = index.get(key);
    if (known) known.last = i;
    else index.set(key, { first: i, last: i });
  }
  return index;
}
