import type { BillLine } from "../nouns/line.ts";

/** What a line says, as text to sort by: lines stand in this order wherever the order of the bill must not matter. */
export function lineKey(line: BillLine): string {
  let key = known.get(line);
  if (key === undefined) {
    const { row: _, material, part, ...rest } = line;
    key = JSON.stringify([part, material.name, rest]);
    known.set(line, key);
  }
  return key;
}

const known = new WeakMap<BillLine, string>();
