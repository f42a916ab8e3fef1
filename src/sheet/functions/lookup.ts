import { CellError, type CellValue } from "../../units/cell.ts";
import { cellAt, itemAt, widthOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { isMatrix, NA, RangeRef, REF, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";
import type { Vector } from "./exact-index.ts";
import {
  binarySearch,
  columnVector,
  exactMatch,
  lastNotAbove,
  lastNotBelow,
  lineOf,
  nearest,
  rowVector,
  vectorOf,
} from "./match-position.ts";

/** A table to look up in, a range or an array, with the line that is searched. */
function tableOf(frame: Frame, table: Value, line: "row" | "column") {
  if (table instanceof RangeRef) {
    const { sheet, top, left, rows, columns } = table;
    const vector = line === "column" ? columnVector(frame, table) : rowVector(frame, table);
    return { rows, columns, vector, cell: (r: number, c: number) => frame.grid.cell(sheet, top + r, left + c) };
  }
  const cells = toMatrix(table, frame);
  const cell = (r: number, c: number) => cellAt(cells, r, c);
  return { rows: cells.length, columns: widthOf(cells), vector: lineOf(cells, line), cell };
}

/** VLOOKUP searches the first column and answers from the same row, HLOOKUP the first row. */
const tableLookup = (name: string, line: "row" | "column"): WorksheetFunction =>
  defineIn(name, "any array number [boolean]", (frame, wanted, given, index, approximate = true): Value => {
    if (wanted instanceof CellError) return wanted;
    if (given instanceof CellError) return given;
    const asked = Math.trunc(index);
    if (asked < 1) return VALUE;
    const table = tableOf(frame, given, line);
    if (asked > (line === "column" ? table.columns : table.rows)) return REF;
    const sought = wanted ?? 0;
    const at = approximate ? lastNotAbove(frame, table.vector, sought) : exactMatch(frame, table.vector, sought, true);
    if (at < 0) return NA;
    return line === "column" ? table.cell(at, asked - 1) : table.cell(asked - 1, at);
  });

function match(frame: Frame, wanted: CellValue, where: Value, type: number): number | CellError {
  if (wanted instanceof CellError) return wanted;
  if (where instanceof CellError) return where;
  const vector = vectorOf(frame, where);
  if (!vector) return NA;
  const sought = wanted ?? 0;
  const at =
    type > 0
      ? lastNotAbove(frame, vector, sought)
      : type < 0
        ? lastNotBelow(vector, sought)
        : exactMatch(frame, vector, sought, true);
  return at < 0 ? NA : at + 1;
}

/** Position by XMATCH's rules; -1 when nothing fits. */
function xPosition(frame: Frame, wanted: CellValue, vector: Vector, mode: number, search: number): number {
  if (search === 2 || search === -2) {
    if (mode < -1 || mode > 1) fail(VALUE);
    return binarySearch(vector, wanted, search === 2 ? 1 : -1, mode as -1 | 0 | 1);
  }
  if (search !== 1 && search !== -1) fail(VALUE);
  const fromEnd = search === -1;
  switch (mode) {
    case 0:
      return exactMatch(frame, vector, wanted, false, fromEnd);
    case 2:
      return exactMatch(frame, vector, wanted, true, fromEnd);
    case -1:
    case 1: {
      const exact = exactMatch(frame, vector, wanted, false, fromEnd);
      return exact >= 0 ? exact : nearest(vector, wanted, mode, fromEnd);
    }
    default:
      return fail(VALUE);
  }
}

function xlookup(
  frame: Frame,
  wanted: CellValue,
  where: Value,
  answers: Value,
  otherwise: (() => Value) | undefined,
  mode: number,
  search: number,
): Value {
  if (wanted instanceof CellError) return wanted;
  if (where instanceof CellError) return where;
  const vector = vectorOf(frame, where);
  if (!vector) return VALUE;
  const at = xPosition(frame, wanted, vector, mode, search);
  if (at < 0) return otherwise ? otherwise() : NA;
  const isColumn =
    where instanceof RangeRef ? where.left === where.right && where.rows > 1 : isMatrix(where) && where.length > 1;
  if (answers instanceof RangeRef) {
    const { sheet, top, left, bottom, right } = answers;
    const length = where instanceof RangeRef ? Math.max(where.rows, where.columns) : vector.length;
    const byRow = isColumn || (vector.length === 1 && answers.rows === 1);
    if (length !== (byRow ? answers.rows : answers.columns)) return VALUE;
    return byRow
      ? new RangeRef(sheet, top + at, left, top + at, right)
      : new RangeRef(sheet, top, left + at, bottom, left + at);
  }
  const rows = toMatrix(answers, frame);
  if (vector.length !== (isColumn ? rows.length : widthOf(rows))) return VALUE;
  return isColumn ? [itemAt(rows, at)] : rows.map((row) => [itemAt(row, at)]);
}

/** LOOKUP with one array: searches its longer side and answers from the opposite edge. */
function lookupInArray(frame: Frame, wanted: CellValue, table: Value): Value {
  const rows = toMatrix(table, frame);
  const wide = widthOf(rows) > rows.length;
  const vector = lineOf(rows, wide ? "row" : "column");
  const at = lastNotAbove(frame, vector, wanted);
  if (at < 0) return NA;
  return wide ? cellAt(rows, rows.length - 1, at) : cellAt(rows, at, widthOf(rows) - 1);
}

export const lookup: readonly WorksheetFunction[] = [
  tableLookup("VLOOKUP", "column"),
  tableLookup("HLOOKUP", "row"),
  defineIn("LOOKUP", "any array [array]", (frame, wanted, where, answers) => {
    if (wanted instanceof CellError) return wanted;
    const sought = wanted ?? 0;
    if (answers === undefined) return lookupInArray(frame, sought, where);
    const vector = vectorOf(frame, where);
    const results = vectorOf(frame, answers);
    if (!vector || !results) return NA;
    const at = lastNotAbove(frame, vector, sought);
    return at < 0 ? NA : answers instanceof RangeRef && at >= results.length ? 0 : results.at(at);
  }),
  defineIn("MATCH", "any array [number]", (frame, wanted, where, type = 1) => match(frame, wanted, where, type)),
  defineIn("XMATCH", "any array [number?] [number?]", (frame, wanted, where, mode = 0, search = 1) => {
    if (wanted instanceof CellError) return wanted;
    const vector = vectorOf(frame, where);
    if (!vector) return VALUE;
    const at = xPosition(frame, wanted, vector, Math.trunc(mode), Math.trunc(search));
    return at < 0 ? NA : at + 1;
  }),
  defineIn(
    "XLOOKUP",
    "any array array [lazy] [number?] [number?]",
    (frame, wanted, where, answers, otherwise, mode = 0, search = 1) =>
      xlookup(frame, wanted, where, answers, otherwise, Math.trunc(mode), Math.trunc(search)),
  ),
];
