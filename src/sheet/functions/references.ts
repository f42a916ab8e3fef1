import { CellError, type CellValue } from "../../units/cell.ts";
import { itemAt, topLeft, widthOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { areasOf, intersect, toMatrix } from "../evaluate/reference.ts";
import { AreaList, isMatrix, LAST_COLUMN, LAST_ROW, NA, RangeRef, REF, VALUE, type Value } from "../evaluate/value.ts";
import { columnLetters, parseCell } from "../formula/address.ts";
import { defineIn, fail } from "./define.ts";
import { indirect } from "./indirect.ts";

/** INDEX: one cell, a whole row or column (0), out of a reference or an array. */
function index(frame: Frame, source: Value, row: number, column: number | undefined, area: number): Value {
  if (source instanceof CellError) return source;
  const areas = areasOf(source);
  if (areas.length > 0) {
    const ref = areas[Math.trunc(area) - 1];
    if (!ref) return REF;
    const [r, c] = positions(ref.rows, ref.columns, row, column);
    if (r > ref.rows || c > ref.columns) return REF;
    return new RangeRef(
      ref.sheet,
      r === 0 ? ref.top : ref.top + r - 1,
      c === 0 ? ref.left : ref.left + c - 1,
      r === 0 ? ref.bottom : ref.top + r - 1,
      c === 0 ? ref.right : ref.left + c - 1,
    );
  }
  const rows = toMatrix(source, frame);
  const [r, c] = positions(rows.length, widthOf(rows), row, column);
  if (r > rows.length || c > widthOf(rows)) return REF;
  const lines = r === 0 ? rows : [itemAt(rows, r - 1)];
  return c === 0 ? lines : lines.map((line) => [itemAt(line, c - 1)]);
}

/** In a single row the one number given is the column. */
function positions(rows: number, columns: number, row: number, column: number | undefined): [number, number] {
  const [r, c] = [Math.trunc(row), column === undefined ? undefined : Math.trunc(column)];
  if (r < 0 || (c ?? 0) < 0) fail(VALUE);
  if (c === undefined) return rows === 1 && columns > 1 ? [1, r] : columns > 1 ? [r, 0] : [r, 1];
  return [r, c];
}

function offset(
  base: Value,
  rows: number,
  columns: number,
  height: number | undefined,
  width: number | undefined,
): Value {
  if (base instanceof CellError) return base;
  if (!(base instanceof RangeRef)) return VALUE;
  const h = height === undefined ? base.rows : Math.trunc(height);
  const w = width === undefined ? base.columns : Math.trunc(width);
  if (h === 0 || w === 0) return REF;
  // A negative height reaches upwards from the shifted corner.
  const top = base.top + Math.trunc(rows) + (h < 0 ? h + 1 : 0);
  const left = base.left + Math.trunc(columns) + (w < 0 ? w + 1 : 0);
  const bottom = top + Math.abs(h) - 1;
  const right = left + Math.abs(w) - 1;
  return top < 0 || left < 0 || bottom > LAST_ROW || right > LAST_COLUMN
    ? REF
    : new RangeRef(base.sheet, top, left, bottom, right);
}

/** ROW and COLUMN: numbers of a reference's rows or columns, or of the formula's own cell. */
function numbers(frame: Frame, given: Value, rows: boolean): Value {
  if (given === undefined) return (rows ? frame.row : frame.column) + 1;
  if (given instanceof CellError) return given;
  if (!(given instanceof RangeRef)) return VALUE;
  const [from, to] = rows ? [given.top, given.bottom] : [given.left, given.right];
  if (from === to) return from + 1;
  const list = Array.from({ length: to - from + 1 }, (_, i) => from + i + 1);
  return rows ? list.map((n) => [n]) : [list];
}

const size = (frame: Frame, given: Value, rows: boolean): number | CellError => {
  if (given instanceof CellError) return given;
  if (given instanceof RangeRef) return rows ? given.rows : given.columns;
  if (given instanceof AreaList) return REF;
  const matrix = toMatrix(given, frame);
  return rows ? matrix.length : widthOf(matrix);
};

function address(
  row: number,
  column: number,
  form: number,
  a1: boolean,
  sheet: string | undefined,
): string | CellError {
  const [r, c, kind] = [Math.trunc(row), Math.trunc(column), Math.trunc(form)];
  if (r < 1 || r > LAST_ROW + 1 || c < 1 || c > LAST_COLUMN + 1 || kind < 1 || kind > 4) return VALUE;
  const lockRow = kind === 1 || kind === 2;
  const lockColumn = kind === 1 || kind === 3;
  const cell = a1
    ? `${lockColumn ? "$" : ""}${columnLetters(c - 1)}${lockRow ? "$" : ""}${r}`
    : `R${lockRow ? r : `[${r}]`}C${lockColumn ? c : `[${c}]`}`;
  if (sheet === undefined) return cell;
  const plain = sheet === "" || (/^[A-Za-z_\u0080-\uffff][\w.\u0080-\uffff]*$/.test(sheet) && !parseCell(sheet));
  return `${plain ? sheet : `'${sheet.replaceAll("'", "''")}'`}!${cell}`;
}

/** How far a range's outer rows or columns are empty: 1 leading, 2 trailing, 3 both; 0 leaves them. */
function trimmed(first: number, last: number, used: readonly number[], mode: number): [number, number] {
  const leading = mode === 1 || mode === 3;
  const trailing = mode === 2 || mode === 3;
  const lowest = used.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const highest = used.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return [leading ? lowest : first, trailing ? highest : last];
}

function trimRange(frame: Frame, given: Value, rows: number, columns: number): Value {
  if (given instanceof CellError) return given;
  if (!(given instanceof RangeRef)) return VALUE;
  const [rowMode, columnMode] = [Math.trunc(rows), Math.trunc(columns)];
  if (rowMode < 0 || rowMode > 3 || columnMode < 0 || columnMode > 3) return VALUE;
  const [usedRows, usedColumns] = [new Set<number>(), new Set<number>()];
  frame.grid.visit(given, (_value, row, column) => {
    usedRows.add(row);
    usedColumns.add(column);
  });
  if (usedRows.size === 0) return REF;
  const [top, bottom] = trimmed(given.top, given.bottom, [...usedRows], rowMode);
  const [left, right] = trimmed(given.left, given.right, [...usedColumns], columnMode);
  return new RangeRef(given.sheet, top, left, bottom, right);
}

export const references: readonly WorksheetFunction[] = [
  defineIn("INDEX", "array number [number?] [number]", (frame, source, row, column, area = 1) =>
    index(frame, source, row, column, area),
  ),
  defineIn(
    "OFFSET",
    "range number number [number?] [number?]",
    (_frame, base, rows, columns, height, width) => offset(base, rows, columns, height, width),
    true,
  ),
  defineIn("INDIRECT", "text [boolean]", (frame, text, a1 = true) => indirect(frame, text, a1), true),
  defineIn("TRIMRANGE", "range [number?] [number?]", (frame, given, rows = 3, columns = 3) =>
    trimRange(frame, given, rows, columns),
  ),
  defineIn("ROW", "[range]", (frame, ref) => numbers(frame, ref, true)),
  defineIn("COLUMN", "[range]", (frame, ref) => numbers(frame, ref, false)),
  defineIn("ROWS", "array", (frame, array) => size(frame, array, true)),
  defineIn("COLUMNS", "array", (frame, array) => size(frame, array, false)),
  defineIn("AREAS", "range", (_frame, ref) => areasOf(ref).length || VALUE),
  defineIn(
    "ADDRESS",
    "number number [number?] [boolean?] [text?]",
    (_frame, row, column, form = 1, a1 = true, sheet = undefined) => address(row, column, form, a1, sheet),
  ),
  defineIn("FORMULATEXT", "range", (frame, ref) => {
    if (!(ref instanceof RangeRef)) return VALUE;
    return frame.grid.formulaAt(ref.sheet, ref.top, ref.left) ?? NA;
  }),
  defineIn("ISFORMULA", "range", (frame, ref) => {
    if (!(ref instanceof RangeRef)) return VALUE;
    return frame.grid.formulaAt(ref.sheet, ref.top, ref.left) !== undefined;
  }),
  defineIn("HYPERLINK", "any [any]", (_frame, link: CellValue, shown: CellValue | undefined) =>
    shown === undefined ? link : shown,
  ),
  defineIn("SHEET", "[range]", (frame, given) => {
    if (given === undefined) return frame.sheet + 1;
    if (given instanceof RangeRef) return given.sheet + 1;
    const name = intersect(given, frame);
    const found = typeof name === "string" ? frame.grid.sheetIndex(name) : undefined;
    return found === undefined ? NA : found + 1;
  }),
  defineIn("SHEETS", "[range]", (frame, given) => {
    if (given === undefined) return frame.grid.sheetCount;
    return new Set(areasOf(given).map((area) => area.sheet)).size || REF;
  }),
  defineIn(
    "ANCHORARRAY",
    "range",
    (frame, ref) => (ref instanceof RangeRef ? (frame.grid.spillOf(ref.sheet, ref.top, ref.left) ?? REF) : REF),
    true,
  ),
  defineIn("SINGLE", "range", (frame, value) => (isMatrix(value) ? topLeft(value) : intersect(value, frame))),
];
