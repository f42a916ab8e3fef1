import { CellError, type CellMatrix } from "../../units/cell.ts";
import { finite } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NA, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";
import { eachNumber } from "./numbers.ts";

/** A matrix of numbers only; anything else in it has no answer. */
function numeric(frame: Frame, value: Value): number[][] {
  return toMatrix(value, frame).map((row) =>
    row.map((v) => (v instanceof CellError ? fail(v) : typeof v === "number" ? v : fail(VALUE))),
  );
}

const square = (rows: number[][]): number[][] => (rows.length === rows[0]!.length ? rows : fail(VALUE));

/**
 * Gauss-Jordan elimination with partial pivoting (Golub and Van Loan, 3.4): the determinant, and the solution for the
 * columns beside. A pivot that is exactly zero means a singular matrix.
 */
function eliminate(matrix: readonly (readonly number[])[], beside: number[][]): number {
  const a = matrix.map((row) => [...row]);
  const n = a.length;
  let determinant = 1;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let r = k + 1; r < n; r++) if (Math.abs(a[r]![k]!) > Math.abs(a[pivot]![k]!)) pivot = r;
    const head = a[pivot]![k]!;
    if (head === 0) return 0;
    if (pivot !== k) {
      [a[k], a[pivot]] = [a[pivot]!, a[k]!];
      [beside[k], beside[pivot]] = [beside[pivot]!, beside[k]!];
      determinant = -determinant;
    }
    determinant *= head;
    for (let r = 0; r < n; r++) {
      if (r === k) continue;
      const factor = a[r]![k]! / head;
      if (factor === 0) continue;
      for (let c = k; c < n; c++) a[r]![c]! -= factor * a[k]![c]!;
      for (let c = 0; c < beside[r]!.length; c++) beside[r]![c]! -= factor * beside[k]![c]!;
    }
  }
  for (let k = 0; k < n; k++) for (let c = 0; c < beside[k]!.length; c++) beside[k]![c]! /= a[k]![k]!;
  return determinant;
}

const identity = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => Number(i === j)));

/** Sums a term over two arrays of the same size; pairs that are not both numbers are left out. */
function pairSum(frame: Frame, x: Value, y: Value, term: (a: number, b: number) => number): number {
  for (const given of [x, y]) if (given instanceof CellError) fail(given);
  const [a, b] = [toMatrix(x, frame), toMatrix(y, frame)];
  if (a.length * a[0]!.length !== b.length * b[0]!.length) fail(NA);
  const [p, q] = [a.flat(), b.flat()];
  let sum = 0;
  let any = false;
  for (let i = 0; i < p.length; i++) {
    const [u, v] = [p[i]!, q[i]!];
    if (u instanceof CellError) fail(u);
    if (v instanceof CellError) fail(v);
    if (typeof u !== "number" || typeof v !== "number") continue;
    sum += term(u, v);
    any = true;
  }
  return any ? sum : fail(DIV0);
}

function sumProduct(frame: Frame, args: readonly Value[]): number | CellError {
  // Text typed into the call is refused; in a range or an array it counts as nothing.
  if (args.some((arg) => typeof arg === "string")) return VALUE;
  const blocks = args.map((arg) => toMatrix(arg, frame));
  const [rows, columns] = [blocks[0]!.length, blocks[0]![0]!.length];
  if (blocks.some((b) => b.length !== rows || b[0]!.length !== columns)) return VALUE;
  let sum = 0;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      let product = 1;
      for (const block of blocks) {
        const value = block[r]![c]!;
        if (value instanceof CellError) return value;
        product *= typeof value === "number" ? value : 0;
      }
      sum += product;
    }
  }
  return finite(sum, NUM);
}

export const matrices: readonly WorksheetFunction[] = [
  defineIn("MMULT", "aa", (frame, left, right): Value => {
    const [a, b] = [numeric(frame, left), numeric(frame, right)];
    if (a[0]!.length !== b.length) return VALUE;
    return a.map((row) => b[0]!.map((_, c) => row.reduce((sum, x, k) => sum + x * b[k]![c]!, 0)));
  }),
  defineIn("MDETERM", "a", (frame, array) => {
    const a = square(numeric(frame, array));
    return eliminate(
      a,
      a.map(() => []),
    );
  }),
  defineIn("MINVERSE", "a", (frame, array): Value => {
    const a = square(numeric(frame, array));
    const inverse = identity(a.length);
    return eliminate(a, inverse) === 0 ? NUM : (inverse as CellMatrix);
  }),
  defineIn("SUMPRODUCT", "a*", (frame, ...args) => sumProduct(frame, args)),
  defineIn("SUMSQ", "s*", (frame, ...args) => {
    let sum = 0;
    eachNumber(frame, args, (x) => {
      sum += x * x;
    });
    return finite(sum, NUM);
  }),
  defineIn("SUMX2MY2", "aa", (frame, x, y) => pairSum(frame, x, y, (a, b) => a * a - b * b)),
  defineIn("SUMX2PY2", "aa", (frame, x, y) => pairSum(frame, x, y, (a, b) => a * a + b * b)),
  defineIn("SUMXMY2", "aa", (frame, x, y) => pairSum(frame, x, y, (a, b) => (a - b) ** 2)),
];
