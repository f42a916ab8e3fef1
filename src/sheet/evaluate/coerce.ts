import type { CellError, CellValue } from "../../units/cell.ts";
import { numberText } from "./number-text.ts";
import { textNumber } from "./text-number.ts";
import { VALUE } from "./value.ts";

/** Excel's conversions of one value for operators and scalar parameters. An error comes back as itself. */
export function toNumber(value: CellValue | undefined): number | CellError {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (value === null || value === undefined) return 0;
  if (typeof value === "string") return textNumber(value) ?? VALUE;
  return value;
}

export function toText(value: CellValue | undefined): string | CellError {
  if (typeof value === "string") return value;
  if (typeof value === "number") return numberText(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (value === null || value === undefined) return "";
  return value;
}

export function toBoolean(value: CellValue | undefined): boolean | CellError {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  if (value === null || value === undefined) return false;
  if (typeof value === "string") {
    const word = value.toUpperCase();
    return word === "TRUE" ? true : word === "FALSE" ? false : VALUE;
  }
  return value;
}

/** A computed number on its way into a cell: Excel knows neither infinity nor NaN. */
export const finite = (value: number, otherwise: CellError): number | CellError =>
  Number.isFinite(value) ? (value === 0 ? 0 : value) : otherwise;
