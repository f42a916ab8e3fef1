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
 * Ordinary least squares by Householder QR on centred data (Golub and Van Loan, 5.3), with the usual statistics.
 * `x` holds one row per observation.
 */
export function leastSquares(y: readonly number[], x: readonly (readonly number[])[], withConstant: boolean): Fit {
  const n = y.length;
  const k = x[0]!.length;
  if (n < k + (withConstant ? 1 : 0)) fail(NUM);
  const mean = (column: (row: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += column(i);
    return sum / n;
  };
  const centreX = Array.from({ length: k }, (_, j) => (withConstant ? mean((i) => x[i]![j]!) : 0));
  const centreY = withConstant ? mean((i) => y[i]!) : 0;
  const a = x.map((row) => row.map((v, j) => v - centreX[j]!));
  const b = y.map((v) => v - centreY);
  const total = b.reduce((sum, v) => sum + v * v, 0);
  const { r, rotated } = triangularise(a, b);
  const slopes = backSubstitute(r, rotated.slice(0, k));
  const residual = rotated.slice(k).reduce((sum, v) => sum + v * v, 0);
  const constant = withConstant ? centreY - slopes.reduce((sum, s, j) => sum + s * centreX[j]!, 0) : 0;
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
    inverse.reduce((sum, column) => sum + column[p]! * column[q]!, 0);
  let constantVariance = 1 / n;
  for (let p = 0; p < k; p++)
    for (let q = 0; q < k; q++) constantVariance += centreX[p]! * centreX[q]! * covariance(p, q);
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

function triangularise(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): { r: number[][]; rotated: number[] } {
  const a = matrix.map((row) => [...row]);
  const b = [...right];
  const n = a.length;
  const k = a[0]!.length;
  for (let j = 0; j < k; j++) {
    let norm = 0;
    for (let i = j; i < n; i++) norm = Math.hypot(norm, a[i]![j]!);
    if (norm === 0) continue;
    if (a[j]![j]! > 0) norm = -norm;
    const v = Array.from({ length: n - j }, (_, i) => a[i + j]![j]! - (i === 0 ? norm : 0));
    const length = v.reduce((sum, e) => sum + e * e, 0);
    const reflect = (get: (i: number) => number, set: (i: number, value: number) => void): void => {
      let dot = 0;
      for (let i = 0; i < v.length; i++) dot += v[i]! * get(i + j);
      for (let i = 0; i < v.length; i++) set(i + j, get(i + j) - (2 * dot * v[i]!) / length);
    };
    for (let c = j; c < k; c++)
      reflect(
        (i) => a[i]![c]!,
        (i, value) => (a[i]![c] = value),
      );
    reflect(
      (i) => b[i]!,
      (i, value) => (b[i] = value),
    );
  }
  return { r: a.slice(0, k), rotated: b };
}

/** Columns that depend on earlier ones get the slope 0, as Excel does for collinear data. */
function backSubstitute(r: readonly (readonly number[])[], right: readonly number[]): number[] {
  const k = right.length;
  const x = new Array<number>(k).fill(0);
  for (let i = k - 1; i >= 0; i--) {
    let sum = right[i]!;
    for (let j = i + 1; j < k; j++) sum -= r[i]![j]! * x[j]!;
    x[i] = Math.abs(r[i]![i]!) < 1e-12 * Math.abs(r[0]![0]!) ? 0 : sum / r[i]![i]!;
  }
  return x;
}
