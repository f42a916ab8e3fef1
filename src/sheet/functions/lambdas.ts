import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt, widthOf } from "../../units/certain.ts";
import { withinLimit } from "../evaluate/array-limit.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { dereference, toMatrix, unwrapped } from "../evaluate/reference.ts";
import { CALC, isMatrix, Lambda, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";

function lambdaOf(value: Value, parameters: number): Lambda {
  if (value instanceof CellError) fail(value);
  if (!(value instanceof Lambda) || parameters < value.least || parameters > value.most) fail(VALUE);
  return value;
}

/** A LAMBDA's answer that has to be one value: an array in a cell of an array is #CALC!. */
function single(value: Value, frame: Frame): CellValue {
  const plain = dereference(value, frame);
  return isMatrix(plain) ? CALC : plain;
}

function byLine(frame: Frame, lines: CellMatrix[], lambda: Lambda): CellValue[] {
  return lines.map((line) => single(lambda.call([unwrapped(line)]), frame));
}

function fold(start: Value, rows: CellMatrix, lambda: Lambda, see: (value: Value) => void): Value {
  let value = start;
  let first = start === undefined;
  for (const cell of rows.flat()) {
    value = first ? cell : lambda.call([value, cell]);
    first = false;
    see(value);
  }
  return value;
}

export const lambdas: readonly WorksheetFunction[] = [
  defineIn("MAP", "array array...", (frame, ...args) => {
    const given = args as Value[];
    const lambda = lambdaOf(given[given.length - 1], given.length - 1);
    const blocks = given.slice(0, -1).map((arg) => toMatrix(arg, frame));
    const rows = Math.max(...blocks.map((b) => b.length));
    const columns = Math.max(...blocks.map(widthOf));
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => single(lambda.call(blocks.map((b) => b[r]?.[c])), frame)),
    );
  }),
  defineIn("BYROW", "array array", (frame, array, fn) => {
    const lambda = lambdaOf(fn, 1);
    return byLine(
      frame,
      toMatrix(array, frame).map((row) => [row]),
      lambda,
    ).map((v) => [v]);
  }),
  defineIn("BYCOL", "array array", (frame, array, fn) => {
    const lambda = lambdaOf(fn, 1);
    const rows = toMatrix(array, frame);
    return [
      byLine(
        frame,
        firstOf(rows).map((_, c) => rows.map((row) => [itemAt(row, c)])),
        lambda,
      ),
    ];
  }),
  defineIn("REDUCE", "array array array", (frame, start, array, fn) =>
    fold(start, toMatrix(array, frame), lambdaOf(fn, 2), () => {}),
  ),
  defineIn("SCAN", "array array array", (frame, start, array, fn) => {
    const rows = toMatrix(array, frame);
    const all: CellValue[] = [];
    fold(start, rows, lambdaOf(fn, 2), (value) => all.push(single(value, frame)));
    const width = widthOf(rows);
    return rows.map((_, r) => all.slice(r * width, (r + 1) * width));
  }),
  defineIn("MAKEARRAY", "number number array", (frame, rows, columns, fn) => {
    const lambda = lambdaOf(fn, 2);
    const [height, width] = [Math.trunc(rows), Math.trunc(columns)];
    if (height < 1 || width < 1) return VALUE;
    withinLimit(height, width);
    return Array.from({ length: height }, (_, r) =>
      Array.from({ length: width }, (_, c) => single(lambda.call([r + 1, c + 1]), frame)),
    );
  }),
  defineIn("ISOMITTED", "range", (_frame, value) => value === undefined),
];
