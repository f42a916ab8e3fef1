import { CellError } from "../../units/cell.ts";
import { cellAt, firstOf, itemAt, widthOf } from "../../units/certain.ts";
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

const square = (rows: number[][]): number[][] => (rows.length === widthOf(rows) ? rows : fail(VALUE));

/**
 * Gauss-Jordan elimination with partial pivoting (Golub and Van Loan, 3.4): the determinant, and the solution for the
 * columns beside. A pivot that is exactly zero means a singular matrix.
 */
function eliminate(matrix: readonly (readonly number[])[], beside: readonly (readonly number[])[]) {
  const n = matrix.length;
  let rows = matrix.map((row, k) => [...row, ...itemAt(beside, k)]);
  let determinant = 1;
  for (let k = 0; k < n; k++) {
    let at = k;
    for (let r = k + 1; r < n; r++) if (Math.abs(cellAt(rows, r, k)) > Math.abs(cellAt(rows, at, k))) at = r;
    const head = itemAt(rows, at);
    const pivot = itemAt(head, k);
    if (pivot === 0) return { determinant: 0, solution: undefined };
    [rows[at], rows[k]] = [itemAt(rows, k), head];
    determinant *= at === k ? pivot : -pivot;
    rows = rows.map((row) => {
      const factor = row === head ? 0 : itemAt(row, k) / pivot;
      return factor === 0 ? row : row.map((v, c) => (c < k ? v : v - factor * itemAt(head, c)));
    });
  }
  return { determinant, solution: rows.map((row, k) => row.slice(n).map((v) => v / itemAt(row, k))) };
}

const identity = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => Number(i === j)));

/** Sums a term over two arrays of the same size; pairs that are not both numbers are left out. */
function pairSum(frame: Frame, x: Value, y: Value, term: (a: number, b: number) => number): number {
  for (const given of [x, y]) if (given instanceof CellError) fail(given);
  const [a, b] = [toMatrix(x, frame), toMatrix(y, frame)];
  if (a.length * widthOf(a) !== b.length * widthOf(b)) fail(NA);
  const beside = b.flat();
  let sum = 0;
  let any = false;
  for (const [i, u] of a.flat().entries()) {
    const v = beside[i];
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
  const [rows, columns] = [firstOf(blocks).length, widthOf(firstOf(blocks))];
  if (blocks.some((block) => block.length !== rows || widthOf(block) !== columns)) return VALUE;
  let sum = 0;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      let product = 1;
      for (const block of blocks) {
        const value = cellAt(block, r, c);
        if (value instanceof CellError) return value;
        product *= typeof value === "number" ? value : 0;
      }
      sum += product;
    }
  }
  return finite(sum, NUM);
}

export const matrices: readonly WorksheetFunction[] = [
  defineIn("MMULT", "array array", (frame, left, right): Value => {
    const [a, b] = [numeric(frame, left), numeric(frame, right)];
    if (widthOf(a) !== b.length) return VALUE;
    return a.map((row) => firstOf(b).map((_, c) => row.reduce((sum, x, k) => sum + x * cellAt(b, k, c), 0)));
  }),
  defineIn("MDETERM", "array", (frame, array) => {
    const a = square(numeric(frame, array));
    return eliminate(
      a,
      a.map(() => []),
    ).determinant;
  }),
  defineIn("MINVERSE", "array", (frame, array): Value => {
    const a = square(numeric(frame, array));
    return eliminate(a, identity(a.length)).solution ?? NUM;
  }),
  defineIn("SUMPRODUCT", "array...", (frame, ...args) => sumProduct(frame, args)),
  defineIn("SUMSQ", "range...", (frame, ...args) => {
    let sum = 0;
    eachNumber(frame, args, (x) => {
      sum += x * x;
    });
    return finite(sum, NUM);
  }),
  defineIn("SUMX2MY2", "array array", (frame, x, y) => pairSum(frame, x, y, (a, b) => a * a - b * b)),
  defineIn("SUMX2PY2", "array array", (frame, x, y) => pairSum(frame, x, y, (a, b) => a * a + b * b)),
  defineIn("SUMXMY2", "array array", (frame, x, y) => pairSum(frame, x, y, (a, b) => (a - b) ** 2)),
];
