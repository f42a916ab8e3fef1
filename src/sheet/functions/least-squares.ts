import { firstOf, itemAt, topLeft, widthOf } from "../../units/certain.ts";
import { NUM } from "../evaluate/value.ts";
import { fail } from "./define.ts";

interface Fit {
  readonly slopes: number[];
  readonly constant: number;
  readonly slopeErrors: number[];
  readonly constantError: number;
  readonly r2: number;
  readonly standardError: number;
  readonly f: number;
  readonly freedom: number;
  readonly regression: number;
  readonly residual: number;
}

/**
 * Ordinary least squares by Householder QR on centered data (Golub and Van Loan, 5.3), with the usual statistics.
 * `x` holds one row per observation.
 */
export function leastSquares(y: readonly number[], x: readonly (readonly number[])[], withConstant: boolean): Fit {
  const n = y.length;
  const k = widthOf(x);
  if (n < k + (withConstant ? 1 : 0)) fail(NUM);
  const mean = (values: readonly number[]): number => (withConstant ? values.reduce((sum, v) => sum + v, 0) / n : 0);
  const centerX = Array.from({ length: k }, (_, j) => mean(x.map((row) => itemAt(row, j))));
  const centerY = mean(y);
  const a = x.map((row) => row.map((v, j) => v - itemAt(centerX, j)));
  const b = y.map((v) => v - centerY);
  const total = b.reduce((sum, v) => sum + v * v, 0);
  const { r, rotated } = triangularise(a, b);
  const slopes = backSubstitute(r, rotated.slice(0, k));
  const residual = rotated.slice(k).reduce((sum, v) => sum + v * v, 0);
  const constant = withConstant ? centerY - slopes.reduce((sum, s, j) => sum + s * itemAt(centerX, j), 0) : 0;
  const freedom = n - k - (withConstant ? 1 : 0);
  const variance = freedom > 0 ? residual / freedom : 0;
  // (R'R)^-1 through the inverse of R: its rows' lengths are the standard errors of the slopes.
  const inverse = Array.from({ length: k }, (_, j) =>
    backSubstitute(
      r,
      Array.from({ length: k }, (_, i) => Number(i === j)),
    ),
  );
  const covariance = (p: number, q: number): number =>
    inverse.reduce((sum, column) => sum + itemAt(column, p) * itemAt(column, q), 0);
  let constantVariance = 1 / n;
  for (const [p, left] of centerX.entries())
    for (const [q, right] of centerX.entries()) constantVariance += left * right * covariance(p, q);
  const regression = total - residual;
  return {
    slopes,
    constant,
    slopeErrors: slopes.map((_, j) => Math.sqrt(variance * covariance(j, j))),
    constantError: Math.sqrt(variance * constantVariance),
    r2: total === 0 ? 1 : regression / total,
    standardError: Math.sqrt(variance),
    f: regression / k / variance,
    freedom,
    regression,
    residual,
  };
}

/** Column by column; `rotated` is the right side turned with it. */
function triangularise(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): { r: number[][]; rotated: number[] } {
  const k = widthOf(matrix);
  let columns = Array.from({ length: k }, (_, c) => matrix.map((row) => itemAt(row, c)));
  let rotated = [...right];
  for (let j = 0; j < k; j++) {
    const below = itemAt(columns, j).slice(j);
    const norm = below.reduce((sum, e) => Math.hypot(sum, e), 0) * (firstOf(below) > 0 ? -1 : 1);
    if (norm === 0) continue;
    const v = below.map((e, i) => e - (i === 0 ? norm : 0));
    const length = v.reduce((sum, e) => sum + e * e, 0);
    const reflect = (column: readonly number[]): number[] => {
      const dot = v.reduce((sum, e, i) => sum + e * itemAt(column, i + j), 0);
      return column.map((e, i) => (i < j ? e : e - (2 * dot * itemAt(v, i - j)) / length));
    };
    columns = columns.map((column, c) => (c < j ? column : reflect(column)));
    rotated = reflect(rotated);
  }
  return { r: Array.from({ length: k }, (_, i) => columns.map((column) => itemAt(column, i))), rotated };
}

/** Columns that depend on earlier ones get the slope 0, as Excel does for collinear data. */
function backSubstitute(r: readonly (readonly number[])[], right: readonly number[]): number[] {
  const x = new Array<number>(right.length).fill(0);
  for (const [i, row] of [...r.entries()].reverse()) {
    let sum = itemAt(right, i);
    for (let j = i + 1; j < x.length; j++) sum -= itemAt(row, j) * itemAt(x, j);
    x[i] = Math.abs(itemAt(row, i)) < 1e-12 * Math.abs(topLeft(r)) ? 0 : sum / itemAt(row, i);
  }
  return x;
}
