/** What a worksheet cell can hold, and the one error type that travels from a calculation to a cell. */

/** In the order of ERROR.TYPE's numbers, as far as those go (Microsoft's description of ERROR.TYPE). */
export const ERROR_CODES = [
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
  "#GETTING_DATA",
  "#SPILL!",
  "#CONNECT!",
  "#BLOCKED!",
  "#UNKNOWN!",
  "#FIELD!",
  "#CALC!",
  "#BUSY!",
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

/** An error in a cell. Worksheet errors carry no message; refusals of SHOP functions always do. */
export class CellError {
  constructor(
    readonly code: ErrorCode,
    readonly message?: string,
  ) {}
}

/** One cell. null is an empty cell. Dates arrive as serial numbers, like in Excel. */
export type CellValue = number | string | boolean | null | CellError;

/** A range or a spill: rows of equal length, at least 1 x 1. */
export type CellMatrix = CellValue[][];

export const isCellError = (value: unknown): value is CellError => value instanceof CellError;

/** Excel treats an empty cell, a missing argument and empty text alike for our purposes: "not given". */
export const isBlank = (value: unknown): value is null | undefined | "" =>
  value === null || value === undefined || value === "";
