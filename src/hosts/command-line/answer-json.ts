import { CellError, type CellMatrix, type CellValue, type ErrorCode } from "../../units/cell.ts";

/** What a worksheet error without a message of its own means, in words of this project. */
const MEANINGS: Partial<Record<ErrorCode, string>> = {
  "#NULL!": "the ranges have no cell in common",
  "#DIV/0!": "division by zero",
  "#VALUE!": "a value is of the wrong type",
  "#REF!": "the reference leads nowhere",
  "#NAME?": "a name is not known",
  "#NUM!": "the number is outside what the function can answer",
  "#N/A": "no value is available",
  "#SPILL!": "the result has no room to spill",
  "#CALC!": "the formula has no result that a cell can show",
};

interface ErrorJson {
  readonly error: { readonly code: ErrorCode; readonly message: string };
}

export const errorJson = (error: CellError): ErrorJson => ({
  error: { code: error.code, message: error.message ?? MEANINGS[error.code] ?? "the cell holds an error" },
});

type ValueJson = number | string | boolean | null | ErrorJson;

const valueJson = (value: CellValue): ValueJson => (value instanceof CellError ? errorJson(value) : value);

/** One answer as a line of `shop calc --json`. A 1 x 1 array is a plain value. */
export function answerJson(value: CellValue | CellMatrix, unit: string | null): string {
  if (value instanceof CellError) return JSON.stringify(errorJson(value));
  if (!Array.isArray(value)) return JSON.stringify({ value, unit: typeof value === "number" ? unit : null });
  return JSON.stringify({ value: value.map((row) => row.map(valueJson)), unit });
}
