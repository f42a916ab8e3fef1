import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { cellAt, firstOf, itemAt, widthOf } from "../../units/certain.ts";
import { compareText, compareValues, sameValue } from "../evaluate/compare.ts";
import type { Frame } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { RangeRef, type Value } from "../evaluate/value.ts";
import { hasWildcard, textTest } from "./criteria.ts";
import { exactPosition, type Vector } from "./exact-index.ts";

/** A row or column to look up in; undefined when it is a block. Whole columns end where the sheet's used part does. */
export function vectorOf(frame: Frame, value: Value): Vector | undefined {
  if (value instanceof RangeRef) {
    if (value.left !== value.right && value.top !== value.bottom) return undefined;
    return value.left === value.right ? columnVector(frame, value) : rowVector(frame, value);
  }
  const rows = toMatrix(value, frame);
  return rows.length === 1 ? lineOf(rows, "row") : widthOf(rows) === 1 ? lineOf(rows, "column") : undefined;
}

/** The first row or column of an array. */
export const lineOf = (rows: CellMatrix, line: "row" | "column"): Vector =>
  line === "row"
    ? { length: widthOf(rows), at: (i) => cellAt(rows, 0, i), key: undefined }
    : { length: rows.length, at: (i) => cellAt(rows, i, 0), key: undefined };

export function columnVector(frame: Frame, ref: RangeRef): Vector {
  const { sheet, top, left } = ref;
  const bottom = Math.min(ref.bottom, Math.max(frame.grid.lastRow(sheet), top));
  const cells = frame.grid.column(sheet, left, top, bottom);
  return {
    length: bottom - top + 1,
    at: (i) => cells[top + i] ?? null,
    key: `column ${sheet} ${left} ${top} ${bottom}`,
  };
}

export function rowVector(frame: Frame, ref: RangeRef): Vector {
  const { sheet, top, left, right } = ref;
  const row = firstOf(frame.grid.matrix(new RangeRef(sheet, top, left, top, right)));
  return { length: row.length, at: (i) => itemAt(row, i), key: `row ${sheet} ${top} ${left} ${right}` };
}

const kindOf = (value: CellValue): string =>
  value === null ? "blank" : value instanceof CellError ? "error" : typeof value;

/** Order between values of one type. */
function order(a: CellValue, b: CellValue): number {
  if (typeof a === "string") return compareText(a, b as string);
  return Number(a) - Number(b);
}

/**
 * The approximate match of MATCH, VLOOKUP and LOOKUP in ascending data: last position whose value is not above the wanted
 * one. Cells of other types are stepped over. Binary search like Excel's, so unsorted data gives what Excel gives: it
 * stops at a probe that is equal and goes on to the last of the equal cells that follow.
 */
export function lastNotAbove(frame: Frame, vector: Vector, wanted: CellValue): number {
  const kind = kindOf(wanted);
  let low = 0;
  let high = vector.length - 1;
  let best = -1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    // Look at the nearest cell of the wanted type at or below the middle, else above it.
    let probe = middle;
    while (probe <= high && kindOf(vector.at(probe)) !== kind) probe++;
    if (probe > high) {
      high = middle - 1;
      continue;
    }
    const compared = order(vector.at(probe), wanted);
    if (compared === 0) return endOfRun(frame, vector, probe);
    if (compared < 0) {
      best = probe;
      low = probe + 1;
    } else high = middle - 1;
  }
  return best;
}

/** Last of the equal cells from here on; remembered, since every search of a column probes the same places. */
function endOfRun(frame: Frame, vector: Vector, from: number): number {
  const key = vector.key && `runs ${vector.key}`;
  const ends = key === undefined ? undefined : ((frame.grid.memo.get(key) as Map<number, number>) ?? new Map());
  const known = ends?.get(from);
  if (known !== undefined) return known;
  const value = vector.at(from);
  let end = from;
  for (let i = from + 1; i < vector.length && kindOf(vector.at(i)) === kindOf(value); i++) {
    if (order(vector.at(i), value) !== 0) break;
    end = i;
  }
  ends?.set(from, end);
  if (key && ends) frame.grid.memo.set(key, ends);
  return end;
}

/** MATCH with type -1: descending data, last position whose value is not below the wanted one. */
export function lastNotBelow(vector: Vector, wanted: CellValue): number {
  const kind = kindOf(wanted);
  let found = -1;
  for (let i = 0; i < vector.length; i++) {
    const cell = vector.at(i);
    if (kindOf(cell) !== kind) continue;
    if (order(cell, wanted) < 0) break;
    found = i;
  }
  return found;
}

/** Exact match; text may hold wildcards. */
export function exactMatch(
  frame: Frame,
  vector: Vector,
  wanted: CellValue,
  wildcards: boolean,
  fromEnd = false,
): number {
  if (wildcards && typeof wanted === "string" && hasWildcard(wanted)) {
    const matches = textTest(wanted);
    const fits = (i: number): boolean => {
      const cell = vector.at(i);
      return typeof cell === "string" && matches(cell);
    };
    if (fromEnd) {
      for (let i = vector.length - 1; i >= 0; i--) if (fits(i)) return i;
      return -1;
    }
    for (let i = 0; i < vector.length; i++) if (fits(i)) return i;
    return -1;
  }
  return exactPosition(frame, vector, wanted, fromEnd);
}

/**
 * XLOOKUP's binary search in data sorted up (1) or down (-1): the exact place, or its neighbor on the asked side (0
 * none). Types count as sorted too: numbers, text, truth values.
 */
export function binarySearch(vector: Vector, wanted: CellValue, direction: 1 | -1, side: -1 | 0 | 1): number {
  let low = 0;
  let high = vector.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compareValues(vector.at(middle), wanted) * direction < 0) low = middle + 1;
    else high = middle;
  }
  if (low < vector.length && sameValue(vector.at(low), wanted)) return low;
  if (side === 0) return -1;
  const place = side === direction ? low : low - 1;
  return place >= 0 && place < vector.length ? place : -1;
}

/** XLOOKUP's next smaller (-1) or next larger (1): any order of data, the nearest value on that side, first of equals. */
export function nearest(vector: Vector, wanted: CellValue, side: -1 | 1, fromEnd: boolean): number {
  const kind = kindOf(wanted);
  let best = -1;
  for (let n = 0; n < vector.length; n++) {
    const i = fromEnd ? vector.length - 1 - n : n;
    const cell = vector.at(i);
    if (kindOf(cell) !== kind) continue;
    const distance = order(cell, wanted) * side;
    if (distance < 0) continue;
    if (distance === 0) return i;
    if (best < 0 || order(cell, vector.at(best)) * side < 0) best = i;
  }
  return best;
}
