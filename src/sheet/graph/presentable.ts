import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import type { Frame } from "../evaluate/frame.ts";
import { intersect } from "../evaluate/reference.ts";
import { isMatrix, NUM, RangeRef, VALUE, type Value } from "../evaluate/value.ts";

/** Longest text a cell holds. */
const LONGEST_TEXT = 32_767;

/** What a formula of one cell shows: of a range its own row or column. */
export function single(result: Value, frame: Frame): CellValue {
  if (result instanceof RangeRef || (typeof result === "object" && result !== null && !(result instanceof CellError))) {
    const value = intersect(result, frame);
    return isMatrix(value) ? topLeft(value) : value;
  }
  return result === undefined ? null : result;
}

/** What a cell can hold. */
export function presentable(value: CellValue): CellValue {
  if (value === null) return 0;
  if (typeof value === "number" && !Number.isFinite(value)) return NUM;
  return typeof value === "string" && value.length > LONGEST_TEXT ? VALUE : value;
}

export const presentableAll = (value: CellValue | CellMatrix): CellValue | CellMatrix =>
  isMatrix(value) ? value.map((row) => row.map(presentable)) : presentable(value);
