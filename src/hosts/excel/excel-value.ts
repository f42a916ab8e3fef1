/**
 * Values on their way between Excel and the catalogue. In: what Excel passes for an "any" matrix (numbers, text,
 * booleans, blanks as null or "", errors as objects or text). Out: plain values, errors as CustomFunctions.Error.
 */
import {
  CellError,
  type CellMatrix,
  type CellValue,
  ERROR_CODES,
  type ErrorCode,
  isCellError,
} from "../../units/cell.ts";
import { message } from "../../units/refusal.ts";

/** The part of Excel's CustomFunctions object that values need; tests bring a stand-in. */
export interface ErrorMaker {
  readonly Error: new (code: CustomFunctions.ErrorCode, message?: string) => object;
}

const isErrorCode = (text: unknown): text is ErrorCode => (ERROR_CODES as readonly unknown[]).includes(text);

function fromExcelCell(given: unknown): CellValue {
  if (given === null || given === undefined) return null;
  if (typeof given === "number" || typeof given === "boolean") return given;
  if (typeof given === "string") return isErrorCode(given) ? new CellError(given) : given;
  if (typeof given === "object") {
    const { code, message: text, basicValue, primitive = basicValue } = given as Readonly<Record<string, unknown>>;
    if (isErrorCode(code)) return typeof text === "string" && text ? new CellError(code, text) : new CellError(code);
    // A data type (currency, entity ...) carries the plain value that the cell shows; builds differ in its name.
    if (primitive !== undefined && typeof primitive !== "object") return fromExcelCell(primitive);
  }
  return new CellError("#VALUE!", message("argument", "a number, text, TRUE, FALSE or an error", `a ${typeof given}`));
}

/** One argument: a value, a block of values, or nothing. */
export function fromExcel(given: unknown): CellValue | CellMatrix {
  if (!Array.isArray(given)) return fromExcelCell(given);
  const rows = given.map((row: unknown): CellValue[] => (Array.isArray(row) ? row : [row]).map(fromExcelCell));
  const width = Math.max(1, ...rows.map((row) => row.length));
  // Excel's ranges are never ragged; a shorter row would otherwise shift what stands beside it.
  return rows.length === 0 ? [[null]] : rows.map((row) => [...row, ...Array(width - row.length).fill(null)]);
}

/**
 * Codes that a custom function may return; only the first two carry a text. #NAME? and #REF! may come in but not go out:
 * Microsoft's page on custom function errors lists them as input only.
 */
const RETURNABLE: readonly ErrorCode[] = ["#VALUE!", "#N/A", "#DIV/0!", "#NUM!", "#NULL!"];

function toExcelError({ code, message: text }: CellError, maker: ErrorMaker): object {
  if (!RETURNABLE.includes(code))
    return new maker.Error("#VALUE!" as CustomFunctions.ErrorCode, message("argument", "free of errors", code));
  return new maker.Error(code as CustomFunctions.ErrorCode, code === "#VALUE!" || code === "#N/A" ? text : undefined);
}

/** Excel shows an empty text where a function answers nothing; null would become 0. */
const toExcelCell = (value: CellValue, maker: ErrorMaker): unknown =>
  isCellError(value) ? toExcelError(value, maker) : (value ?? "");

/**
 * The answer of a call. A function declared to spill answers rows even when it is one value. An error alone is thrown,
 * which is the documented way; inside rows it stays in its own place.
 */
export function toExcel(value: CellValue | CellMatrix, spills: boolean, maker: ErrorMaker): unknown {
  if (isCellError(value)) throw toExcelError(value, maker);
  if (Array.isArray(value)) return value.map((row) => row.map((cell) => toExcelCell(cell, maker)));
  return spills ? [[toExcelCell(value, maker)]] : toExcelCell(value, maker);
}
