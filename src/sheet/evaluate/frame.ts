import type { CellMatrix, CellValue } from "../../units/cell.ts";
import type { Parsed } from "../formula/parse.ts";
import type { CustomFunctions } from "./custom-functions.ts";
import type { Pivot } from "./pivot.ts";
import type { Precedent } from "./precedent.ts";
import type { Table } from "./table.ts";
import type { RangeRef, Value } from "./value.ts";

/** The workbook as an expression sees it. Reading a cell that waits for its own calculation throws Pending inside. */
export interface Grid {
  readonly custom: CustomFunctions;
  readonly functions: WorksheetFunctions;
  readonly date1904: boolean;
  /** Serial of the moment TODAY and NOW answer; undefined: they keep their value. */
  readonly now: number | undefined;
  /** A source of random numbers; undefined: RAND and its like keep their value. */
  readonly random: (() => number) | undefined;
  /** What calling something that is neither Excel's nor ours does: an error value, or Keep thrown. */
  unknownFunction(name: string): CellValue;
  sheetIndex(name: string): number | undefined;
  sheetName(sheet: number): string;
  readonly sheetCount: number;
  definedName(name: string, sheet: number): Template | CellValue | undefined;
  table(name: string): Table | undefined;
  tableAt(sheet: number, row: number, column: number): Table | undefined;
  /** The pivot table that covers the cell, its own part read only then. */
  pivotAt(sheet: number, row: number, column: number): Pivot | undefined;
  cell(sheet: number, row: number, column: number): CellValue;
  matrix(ref: RangeRef): CellMatrix;
  /** Every non-empty cell of the range, column by column or row by row as the grid likes best: rows first. */
  visit(ref: RangeRef, see: (value: CellValue, row: number, column: number) => void): void;
  /** One column's cells as stored, for lookups: undefined stands for empty. Ensures all of them are calculated. */
  column(sheet: number, column: number, top: number, bottom: number): readonly (CellValue | undefined)[];
  lastRow(sheet: number): number;
  /** For functions that make formulas of texts. */
  compile(parsed: Parsed, at: Frame): Template;
  spillOf(sheet: number, row: number, column: number): RangeRef | undefined;
  formulaAt(sheet: number, row: number, column: number): string | undefined;
  rowHidden(sheet: number, row: number): boolean;
  /** Hidden by the sheet's filter, not by hand. */
  rowFiltered(sheet: number, row: number): boolean;
  /** Scratch memory that lives for one recalculation: running totals, lookup indexes. */
  readonly memo: Map<string, unknown>;
}

/** Names bound by LET and LAMBDA, innermost first. */
export interface Scope {
  readonly value: Value;
  readonly outer: Scope | undefined;
}

/** One evaluation: which cell asks, with which literals, in which scope. */
export class Frame {
  scope: Scope | undefined;
  constructor(
    readonly grid: Grid,
    readonly sheet: number,
    readonly row: number,
    readonly column: number,
    readonly literals: readonly (number | string)[],
  ) {}
}

export type Code = (frame: Frame) => Value;

/** A compiled formula, shared by all cells with the same key. */
export interface Template {
  readonly code: Code;
  readonly precedents: readonly Precedent[];
  /** Literals of the text it was compiled from; cells that share the template bring their own. */
  readonly literals: readonly (number | string)[];
  /** May read cells no precedent names (OFFSET, INDIRECT, a name that does). */
  readonly dynamic: boolean;
  /** Means something else in another cell, so it is not shared. */
  readonly local: boolean;
  /** Canonical custom function when the root is a call of one: it decides the unit of the answer. */
  readonly rootCustom: string | undefined;
}

/**
 * How an argument is read. One value, stretched over arrays element by element: number, text, boolean, value (no error),
 * any (errors too); with "?" an argument left empty between commas counts as not given. As it comes: range (a range or
 * values), array (the same, evaluated as an array formula), whole (a value or an array, not stretched). On demand: lazy,
 * and lazyWhole, read like whole.
 */
export type ArgumentKind = ScalarKind | "range" | "array" | "whole" | "lazy" | "lazyWhole";
export type ScalarKind =
  | "number"
  | "text"
  | "boolean"
  | "value"
  | "any"
  | `${"number" | "text" | "boolean" | "value"}?`;

/** One of Excel's own functions: how its arguments are read, and what it answers. */
export interface WorksheetFunction {
  readonly name: string;
  readonly kinds: readonly ArgumentKind[];
  readonly least: number;
  readonly most: number;
  /** How many of the last kinds repeat. */
  readonly repeats: number;
  /** May read cells no argument names. */
  readonly dynamic: boolean;
  readonly body: (frame: Frame, ...args: never[]) => Value;
}

/** Excel's functions by name; handed in, so that the compiler does not know which there are. */
export interface WorksheetFunctions {
  find(name: string): WorksheetFunction | undefined;
  names(): readonly string[];
}
