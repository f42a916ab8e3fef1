import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { topLeft, widthOf } from "../../units/certain.ts";
import type { Frame } from "./frame.ts";
import { AreaList, CALC, isMatrix, Lambda, RangeRef, VALUE, type Value } from "./value.ts";

/** The values behind any expression value: references are read, several areas cannot be one matrix. */
export function dereference(value: Value, frame: Frame): CellValue | CellMatrix {
  if (value instanceof RangeRef) {
    return value.isCell ? frame.grid.cell(value.sheet, value.top, value.left) : frame.grid.matrix(value);
  }
  if (value instanceof AreaList) {
    return value.areas.length === 1 ? dereference(value.areas[0], frame) : VALUE;
  }
  if (value instanceof Lambda) return CALC;
  return isMatrix(value) ? unwrapped(value) : value === undefined ? null : value;
}

/** An array of one cell is that cell. */
export const unwrapped = (rows: CellMatrix): CellValue | CellMatrix =>
  rows.length === 1 && widthOf(rows) === 1 ? topLeft(rows) : rows;

/** The matrix behind a value, 1 x 1 for a single one. */
export function toMatrix(value: Value, frame: Frame): CellMatrix {
  const plain = dereference(value, frame);
  return isMatrix(plain) ? plain : [[plain]];
}

/** Implicit intersection: the one cell of a range in the formula's own row or column; an array gives its first value. */
export function intersect(value: Value, frame: Frame): CellValue {
  if (value instanceof RangeRef) {
    if (value.isCell) return frame.grid.cell(value.sheet, value.top, value.left);
    if (value.left === value.right && frame.row >= value.top && frame.row <= value.bottom) {
      return frame.grid.cell(value.sheet, frame.row, value.left);
    }
    if (value.top === value.bottom && frame.column >= value.left && frame.column <= value.right) {
      return frame.grid.cell(value.sheet, value.top, frame.column);
    }
    return VALUE;
  }
  if (value instanceof AreaList) return VALUE;
  if (isMatrix(value)) return topLeft(value);
  if (value instanceof Lambda) return CALC;
  return value === undefined ? null : value;
}

/** The first value of a range or an array, for functions that look at one only (T, N). */
export function firstValue(value: Value, frame: Frame): CellValue {
  const area = areasOf(value)[0];
  if (area) return frame.grid.cell(area.sheet, area.top, area.left);
  return isMatrix(value) ? topLeft(value) : intersect(value, frame);
}

/** The range operator A1:B2 between computed references: the smallest rectangle that holds both. */
export function join(a: Value, b: Value): Value {
  if (a instanceof CellError) return a;
  if (b instanceof CellError) return b;
  if (!(a instanceof RangeRef) || !(b instanceof RangeRef) || a.sheet !== b.sheet) return VALUE;
  return new RangeRef(
    a.sheet,
    Math.min(a.top, b.top),
    Math.min(a.left, b.left),
    Math.max(a.bottom, b.bottom),
    Math.max(a.right, b.right),
  );
}

export function areasOf(value: Value): readonly RangeRef[] {
  return value instanceof RangeRef ? [value] : value instanceof AreaList ? value.areas : [];
}

/** The intersection operator (a space): cells in both. */
export function overlap(a: RangeRef, b: RangeRef): RangeRef | undefined {
  if (a.sheet !== b.sheet) return undefined;
  const top = Math.max(a.top, b.top);
  const left = Math.max(a.left, b.left);
  const bottom = Math.min(a.bottom, b.bottom);
  const right = Math.min(a.right, b.right);
  return top <= bottom && left <= right ? new RangeRef(a.sheet, top, left, bottom, right) : undefined;
}
