import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { cellAt, firstOf, itemAt, topLeft, widthOf } from "../../units/certain.ts";
import { withinLimit } from "../evaluate/array-limit.ts";
import { toBoolean } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { areasOf, toMatrix } from "../evaluate/reference.ts";
import { CALC, isReference, NA, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { define, defineIn, fail } from "./define.ts";
import { sortRows, uniqueRows } from "./order.ts";

function transposed(rows: CellMatrix): CellMatrix {
  withinLimit(rows.length, widthOf(rows));
  return firstOf(rows).map((_, c) => rows.map((row) => itemAt(row, c)));
}

/** A range's used part only matters where whole columns are given; these functions read what there is. */
const matrix = (frame: Frame, value: Value): CellMatrix => {
  const rows = toMatrix(value, frame);
  const first = topLeft(rows);
  if (rows.length === 1 && widthOf(rows) === 1 && first instanceof CellError && !isReference(value)) fail(first);
  return rows;
};

function filter(rows: CellMatrix, include: CellMatrix, otherwise: CellMatrix | undefined): Value {
  const byRow = widthOf(include) === 1 && include.length === rows.length;
  const byColumn = !byRow && include.length === 1 && widthOf(include) === widthOf(rows);
  if (!byRow && !byColumn) return VALUE;
  const keep = (byRow ? include.map(firstOf) : firstOf(include)).map((value) => {
    const truth = toBoolean(value);
    return truth instanceof CellError ? fail(truth) : truth;
  });
  const kept = byRow ? rows.filter((_, i) => keep[i]) : rows.map((row) => row.filter((_, i) => keep[i]));
  return widthOf(kept) > 0 ? kept : (otherwise ?? CALC);
}

/** Which part TAKE keeps or DROP leaves: n from the start, or from the end when negative. */
function part<T>(list: readonly T[], n: number | undefined, take: boolean): T[] {
  if (n === undefined) return [...list];
  const whole = Math.trunc(n);
  if (take) return whole >= 0 ? list.slice(0, whole) : list.slice(Math.max(0, list.length + whole));
  return whole >= 0 ? list.slice(whole) : list.slice(0, Math.max(0, list.length + whole));
}

function cut(rows: CellMatrix, height: number | undefined, width: number | undefined, take: boolean): Value {
  const lines = part(rows, height, take).map((row) => part(row, width, take));
  return widthOf(lines) > 0 ? lines : CALC;
}

/** Rows or columns by number, from the end when negative. */
function chosen<T>(list: readonly T[], frame: Frame, picks: readonly Value[]): T[] {
  const numbers = picks.flatMap((pick) => toMatrix(pick, frame).flat());
  return numbers.map((n) => {
    if (n instanceof CellError) fail(n);
    const at = Math.trunc(Number(n));
    return list[at > 0 ? at - 1 : list.length + at] ?? fail(VALUE);
  });
}

function stacked(frame: Frame, args: readonly Value[]): CellMatrix {
  const blocks = args.flatMap((arg) => {
    const areas = areasOf(arg);
    return areas.length > 0 ? areas.map((area) => frame.grid.matrix(area)) : [toMatrix(arg, frame)];
  });
  const width = Math.max(...blocks.map(widthOf));
  withinLimit(
    blocks.reduce((sum, rows) => sum + rows.length, 0),
    width,
  );
  return blocks.flatMap((rows) => rows.map((row) => [...row, ...new Array<CellValue>(width - row.length).fill(NA)]));
}

function inOneLine(rows: CellMatrix, ignore: number, byColumn: boolean): CellValue[] {
  withinLimit(rows.length, widthOf(rows));
  const all = (byColumn ? transposed(rows) : rows).flat();
  const kind = Math.trunc(ignore);
  return all.filter((v) => !((kind & 1 && v === null) || (kind & 2 && v instanceof CellError)));
}

function wrapped(line: readonly CellValue[], count: number, pad: CellValue): CellMatrix {
  const width = Math.trunc(count);
  if (width < 1) fail(NUM);
  const rows: CellMatrix = [];
  for (let at = 0; at < line.length; at += width) {
    const row = line.slice(at, at + width);
    rows.push([
      ...row,
      ...new Array<CellValue>((line.length > width ? width : Math.min(width, line.length)) - row.length).fill(pad),
    ]);
  }
  return rows;
}

const vector = (rows: CellMatrix): CellValue[] =>
  rows.length === 1 ? firstOf(rows) : widthOf(rows) === 1 ? rows.flat() : fail(VALUE);
const padding = (frame: Frame, pad: Value): CellValue => (pad === undefined ? NA : topLeft(toMatrix(pad, frame)));
const orCalc = (rows: CellMatrix): Value => (widthOf(rows) > 0 ? rows : CALC);

export const arrays: readonly WorksheetFunction[] = [
  defineIn("TRANSPOSE", "array", (frame, array) => transposed(matrix(frame, array))),
  defineIn("FILTER", "array array [array]", (frame, array, include, otherwise) =>
    filter(
      matrix(frame, array),
      matrix(frame, include),
      otherwise === undefined ? undefined : toMatrix(otherwise, frame),
    ),
  ),
  defineIn("SORT", "array [array] [array] [boolean?]", (frame, array, by, order, acrossColumns = false) => {
    const rows = matrix(frame, array);
    const keys = by === undefined ? [1] : toMatrix(by, frame).flat().map(Number);
    const orders = order === undefined ? [1] : toMatrix(order, frame).flat().map(Number);
    const lines = acrossColumns ? transposed(rows) : rows;
    if (keys.some((k) => !(k >= 1 && k <= widthOf(lines))) || orders.some((o) => o !== 1 && o !== -1)) return VALUE;
    const sorted = sortRows(
      lines,
      keys.map((k, i) => ({ of: (row) => cellAt(lines, row, Math.trunc(k) - 1), order: orders[i] ?? firstOf(orders) })),
    );
    return acrossColumns ? transposed(sorted) : sorted;
  }),
  defineIn("SORTBY", "array array [array...]", (frame, array, ...rest) => {
    const rows = matrix(frame, array);
    const args = rest as Value[];
    const keys: { of: (row: number) => CellValue; order: number }[] = [];
    let across = false;
    for (let i = 0; i < args.length; i += 2) {
      const by = matrix(frame, args[i]);
      const values = vector(by);
      across = rows.length !== values.length || (by.length === 1 && rows.length === 1);
      if (values.length !== (across ? widthOf(rows) : rows.length)) return VALUE;
      const order = args[i + 1] === undefined ? 1 : Number(topLeft(toMatrix(args[i + 1], frame)));
      if (order !== 1 && order !== -1) return VALUE;
      keys.push({ of: (row) => itemAt(values, row), order });
    }
    const sorted = sortRows(across ? transposed(rows) : rows, keys);
    return across ? transposed(sorted) : sorted;
  }),
  defineIn("UNIQUE", "array [boolean?] [boolean?]", (frame, array, acrossColumns = false, once = false) => {
    const rows = matrix(frame, array);
    const kept = uniqueRows(acrossColumns ? transposed(rows) : rows, once);
    return kept.length === 0 ? CALC : acrossColumns ? transposed(kept) : kept;
  }),
  define("SEQUENCE", "number [number?] [number?] [number?]", (rows, columns = 1, start = 1, step = 1) => {
    const [height, width] = [Math.trunc(rows), Math.trunc(columns)];
    if (height < 0 || width < 0) return VALUE;
    if (height === 0 || width === 0) return CALC;
    withinLimit(height, width);
    return Array.from({ length: height }, (_, r) =>
      Array.from({ length: width }, (_, c) => start + (r * width + c) * step),
    );
  }),
  defineIn("TAKE", "array number? [number?]", (frame, array, rows, columns) =>
    cut(matrix(frame, array), rows, columns, true),
  ),
  defineIn("DROP", "array number? [number?]", (frame, array, rows, columns) =>
    cut(matrix(frame, array), rows, columns, false),
  ),
  defineIn("EXPAND", "array number? [number?] [value?]", (frame, array, rows, columns, pad) => {
    const from = matrix(frame, array);
    const height = Math.trunc(rows ?? from.length);
    const width = Math.trunc(columns ?? widthOf(from));
    if (height < from.length || width < widthOf(from)) return VALUE;
    withinLimit(height, width);
    return Array.from({ length: height }, (_, r) => Array.from({ length: width }, (_, c) => from[r]?.[c] ?? pad ?? NA));
  }),
  defineIn("VSTACK", "array...", (frame, ...args) => stacked(frame, args)),
  defineIn("HSTACK", "array...", (frame, ...args) => {
    const sideways = args.flatMap((arg) => {
      const areas = areasOf(arg);
      return areas.length > 0
        ? areas.map((area) => transposed(frame.grid.matrix(area)))
        : [transposed(toMatrix(arg, frame))];
    });
    return transposed(stacked(frame, sideways));
  }),
  defineIn("CHOOSEROWS", "array array...", (frame, array, ...picks) =>
    chosen(matrix(frame, array), frame, picks as Value[]),
  ),
  defineIn("CHOOSECOLS", "array array...", (frame, array, ...picks) =>
    transposed(chosen(transposed(matrix(frame, array)), frame, picks as Value[])),
  ),
  defineIn("TOCOL", "array [number?] [boolean?]", (frame, array, ignore = 0, byColumn = false) =>
    orCalc(inOneLine(matrix(frame, array), ignore, byColumn).map((v) => [v])),
  ),
  defineIn("TOROW", "array [number?] [boolean?]", (frame, array, ignore = 0, byColumn = false) =>
    orCalc([inOneLine(matrix(frame, array), ignore, byColumn)]),
  ),
  defineIn("WRAPROWS", "array number [array]", (frame, array, count, pad) =>
    wrapped(vector(matrix(frame, array)), count, padding(frame, pad)),
  ),
  defineIn("WRAPCOLS", "array number [array]", (frame, array, count, pad) =>
    transposed(wrapped(vector(matrix(frame, array)), count, padding(frame, pad))),
  ),
];
