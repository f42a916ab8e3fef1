import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { compareText } from "../evaluate/compare.ts";

// Sorting puts numbers before text, then truth values, then errors; empty cells come last in either direction.
const rank = (value: CellValue): number =>
  typeof value === "number" ? 0 : typeof value === "string" ? 1 : typeof value === "boolean" ? 2 : 3;

function compare(a: CellValue, b: CellValue): number {
  const difference = rank(a) - rank(b);
  if (difference !== 0) return difference;
  if (typeof a === "number") return a - (b as number);
  if (typeof a === "string") return compareText(a, b as string);
  return a instanceof CellError ? 0 : Number(a) - Number(b);
}

interface SortKey {
  readonly of: (row: number) => CellValue;
  /** 1 ascending, -1 descending. */
  readonly order: number;
}

/** Rows in the order of the keys; equal rows keep their order. */
export function sortRows(rows: CellMatrix, keys: readonly SortKey[]): CellMatrix {
  const positions = rows.map((_, i) => i);
  positions.sort((a, b) => {
    for (const { of, order } of keys) {
      const [x, y] = [of(a), of(b)];
      if (x === null || y === null) {
        if (x !== y) return x === null ? 1 : -1;
        continue;
      }
      const result = compare(x, y) * order;
      if (result !== 0) return result;
    }
    return a - b;
  });
  return positions.map((i) => itemAt(rows, i));
}

/** The same for rows that count as the same: letters by any case, an empty cell as 0. */
export const keyOf = (row: readonly CellValue[]): string =>
  row
    .map((v) =>
      typeof v === "string"
        ? `s${v.toLowerCase()}`
        : typeof v === "number"
          ? `n${v}`
          : v instanceof CellError
            ? `e${v.code}`
            : v === null
              ? "n0"
              : `b${v}`,
    )
    .join("\u0000");

/** First of every different row, or with `once` the rows that occur a single time. */
export function uniqueRows(rows: CellMatrix, once: boolean): CellMatrix {
  const seen = new Map<string, { row: CellValue[]; count: number }>();
  for (const row of rows) {
    const key = keyOf(row);
    const known = seen.get(key);
    if (known) known.count++;
    else seen.set(key, { row, count: 1 });
  }
  return [...seen.values()].filter((entry) => !once || entry.count === 1).map((entry) => entry.row);
}
