/**
 * One argument as a matrix of cells. Excel and the headless engine send nothing else than cells and ranges; a caller from
 * JavaScript may send anything, and gets a sentence like everybody.
 */
import { type CellMatrix, type CellValue, isCellError } from "../../units/cell.ts";
import { message, Refusal } from "../../units/refusal.ts";

const EMPTY: CellMatrix = [[null]];

export function asMatrix(argument: unknown, name: string): CellMatrix {
  if (!Array.isArray(argument)) return [[asCell(argument, name)]];
  const rows: readonly unknown[] = argument;
  if (rows.length === 0) return EMPTY;
  const width = Array.isArray(rows[0]) ? rows[0].length : 0;
  if (!rows.every((row): row is unknown[] => Array.isArray(row) && row.length === width))
    throw refused(name, "a range with rows of equal length", "rows that differ");
  if (width === 0) return EMPTY;
  return rows.every((row) => row.every(isCell))
    ? (rows as CellMatrix)
    : rows.map((row) => row.map((each) => asCell(each, name)));
}

function asCell(value: unknown, name: string): CellValue {
  if (value === undefined) return null;
  if (isCell(value)) return value;
  throw refused(name, "what a cell can hold: a number, a text or a truth value", `a ${typeof value}`);
}

const isCell = (value: unknown): value is CellValue =>
  typeof value === "number" ||
  typeof value === "string" ||
  typeof value === "boolean" ||
  value === null ||
  isCellError(value);

const refused = (name: string, rule: string, got: string) => new Refusal("#VALUE!", message(name, rule, got));
