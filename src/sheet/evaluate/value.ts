import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { CellError, type ErrorCode } from "../../units/cell.ts";

/** A rectangle of one sheet, 0-based and inclusive. Whole columns and rows carry the sheet's full extent. */
export class RangeRef {
  constructor(
    readonly sheet: number,
    readonly top: number,
    readonly left: number,
    readonly bottom: number,
    readonly right: number,
  ) {}

  get rows(): number {
    return this.bottom - this.top + 1;
  }

  get columns(): number {
    return this.right - this.left + 1;
  }

  get isCell(): boolean {
    return this.top === this.bottom && this.left === this.right;
  }
}

/** Several rectangles: a union (A1,B2) or a 3-D reference (Sheet1:Sheet3!A1). */
export class AreaList {
  constructor(readonly areas: readonly RangeRef[]) {}
}

/** The value of a LAMBDA, or of a function's bare name: called with values, knows how many it takes. */
export class Lambda {
  constructor(
    readonly least: number,
    readonly most: number,
    readonly call: (args: readonly Value[]) => Value,
  ) {}
}

/** Whatever an expression can yield. undefined is an omitted argument, null an empty cell. */
export type Value = CellValue | CellMatrix | RangeRef | AreaList | Lambda | undefined;

export const isMatrix = (value: unknown): value is CellMatrix => Array.isArray(value);
export const isReference = (value: unknown): value is RangeRef | AreaList =>
  value instanceof RangeRef || value instanceof AreaList;

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

const bare = new Map<ErrorCode, CellError>();

/** The shared error without a message: worksheet functions say no more than the code. */
export function errorOf(code: ErrorCode): CellError {
  let error = bare.get(code);
  if (error === undefined) {
    error = new CellError(code);
    bare.set(code, error);
  }
  return error;
}

export const DIV0 = errorOf("#DIV/0!");
export const VALUE = errorOf("#VALUE!");
export const REF = errorOf("#REF!");
export const NAME = errorOf("#NAME?");
export const NUM = errorOf("#NUM!");
export const NA = errorOf("#N/A");
export const NULL = errorOf("#NULL!");
export const CALC = errorOf("#CALC!");
export const SPILL = errorOf("#SPILL!");
