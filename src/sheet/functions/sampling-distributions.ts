import { CellError } from "../../units/cell.ts";
import { cellAt, widthOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NA, NUM, type Value } from "../evaluate/value.ts";
import { alias, define, defineIn } from "./define.ts";
import { invertAbove } from "./invert.ts";
import { numbersOf } from "./numbers.ts";
import { incompleteBeta, incompleteGamma, logGamma } from "./special-functions.ts";
import { meanOf, squaredDeviations, varianceOf } from "./statistics.ts";

/** Student's t: probability above |t| on one side. */
const tailT = (t: number, freedom: number): number => incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;
const lowerT = (t: number, freedom: number): number => (t > 0 ? 1 - tailT(t, freedom) : tailT(t, freedom));
const densityT = (t: number, freedom: number): number =>
  Math.exp(logGamma((freedom + 1) / 2) - logGamma(freedom / 2) - ((freedom + 1) / 2) * Math.log1p((t * t) / freedom)) /
  Math.sqrt(freedom * Math.PI);

/** t with the given probability in both tails together. */
function inverseTwoTails(p: number, freedom: number): number | CellError {
  const df = Math.trunc(freedom);
  if (p <= 0 || p > 1 || df < 1) return NUM;
  if (p === 1) return 0;
  const t = invertAbove((x) => -2 * tailT(x, df), -p, 0, 2);
  return t;
}

function inverseT(p: number, freedom: number): number | CellError {
  if (p <= 0 || p >= 1) return NUM;
  const t = inverseTwoTails(2 * Math.min(p, 1 - p), freedom);
  return t instanceof CellError || p >= 0.5 ? t : -t;
}

const upperF = (x: number, d1: number, d2: number): number => incompleteBeta(d2 / (d2 + d1 * x), d2 / 2, d1 / 2);
const lowerF = (x: number, d1: number, d2: number): number => incompleteBeta((d1 * x) / (d1 * x + d2), d1 / 2, d2 / 2);
const densityF = (x: number, d1: number, d2: number): number => {
  if (x === 0) return d1 === 2 ? 1 : 0;
  const log = logGamma((d1 + d2) / 2) - logGamma(d1 / 2) - logGamma(d2 / 2);
  return Math.exp(
    log + (d1 / 2) * Math.log(d1 / d2) + (d1 / 2 - 1) * Math.log(x) - ((d1 + d2) / 2) * Math.log1p((d1 * x) / d2),
  );
};

const degrees = (x: number): number => Math.trunc(x);
const badF = (x: number, d1: number, d2: number): boolean => x < 0 || degrees(d1) < 1 || degrees(d2) < 1;
const badChi = (x: number, df: number): boolean => x < 0 || degrees(df) < 1;

const densityChi = (x: number, df: number): number =>
  x === 0
    ? df === 2
      ? 0.5
      : 0
    : Math.exp((df / 2 - 1) * Math.log(x) - x / 2 - (df / 2) * Math.LN2 - logGamma(df / 2));

/** T.TEST: 1 paired, 2 equal variances, 3 unequal variances (Welch). */
function tTest(frame: Frame, first: Value, second: Value, tails: number, type: number): number | CellError {
  const [k, sides] = [Math.trunc(type), Math.trunc(tails)];
  if ((sides !== 1 && sides !== 2) || k < 1 || k > 3) return NUM;
  let [x, y] = [numbersOf(frame, [first]), numbersOf(frame, [second])];
  let t: number;
  let freedom: number;
  if (k === 1) {
    const pairs = toMatrix(first, frame)
      .flat()
      .map((a, i) => [a, toMatrix(second, frame).flat()[i]] as const);
    if (toMatrix(first, frame).flat().length !== toMatrix(second, frame).flat().length) return NA;
    const differences = pairs.flatMap(([a, b]) => (typeof a === "number" && typeof b === "number" ? [a - b] : []));
    if (differences.length < 2) return DIV0;
    t = meanOf(differences) / Math.sqrt(varianceOf(differences, false) / differences.length);
    freedom = differences.length - 1;
  } else {
    if (x.length < 2 || y.length < 2) return DIV0;
    if (k === 2) {
      freedom = x.length + y.length - 2;
      const pooled = (squaredDeviations(x) + squaredDeviations(y)) / freedom;
      t = (meanOf(x) - meanOf(y)) / Math.sqrt(pooled * (1 / x.length + 1 / y.length));
    } else {
      const [u, v] = [varianceOf(x, false) / x.length, varianceOf(y, false) / y.length];
      t = (meanOf(x) - meanOf(y)) / Math.sqrt(u + v);
      freedom = (u + v) ** 2 / (u ** 2 / (x.length - 1) + v ** 2 / (y.length - 1));
    }
  }
  [x, y] = [[], []];
  return Number.isFinite(t) ? sides * tailT(Math.abs(t), freedom) : DIV0;
}

function chiTest(frame: Frame, actual: Value, expected: Value): number | CellError {
  const [a, e] = [toMatrix(actual, frame), toMatrix(expected, frame)];
  if (a.length !== e.length || widthOf(a) !== widthOf(e) || (a.length === 1 && widthOf(a) === 1)) return NA;
  let chi = 0;
  for (let r = 0; r < a.length; r++) {
    for (let c = 0; c < widthOf(a); c++) {
      const [x, y] = [cellAt(a, r, c), cellAt(e, r, c)];
      if (x instanceof CellError) return x;
      if (y instanceof CellError) return y;
      if (typeof x !== "number" || typeof y !== "number") continue;
      if (y === 0) return DIV0;
      chi += (x - y) ** 2 / y;
    }
  }
  const df = a.length === 1 ? widthOf(a) - 1 : widthOf(a) === 1 ? a.length - 1 : (a.length - 1) * (widthOf(a) - 1);
  return incompleteGamma(df / 2, chi / 2).upper;
}

const fTest = (frame: Frame, first: Value, second: Value): number | CellError => {
  const [x, y] = [numbersOf(frame, [first]), numbersOf(frame, [second])];
  if (x.length < 2 || y.length < 2) return DIV0;
  const [u, v] = [varianceOf(x, false), varianceOf(y, false)];
  if (u === 0 || v === 0) return DIV0;
  const p = upperF(u / v, x.length - 1, y.length - 1);
  return 2 * Math.min(p, 1 - p);
};

const tInverse2 = define("T.INV.2T", "number number", inverseTwoTails);
const fUpper = define("F.DIST.RT", "number number number", (x, d1, d2) =>
  badF(x, d1, d2) ? NUM : upperF(x, degrees(d1), degrees(d2)),
);
const fUpperInverse = define("F.INV.RT", "number number number", (p, d1, d2) =>
  p <= 0 || p > 1 || badF(0, d1, d2)
    ? NUM
    : p === 1
      ? 0
      : invertAbove((x) => -upperF(x, degrees(d1), degrees(d2)), -p, 0, 1),
);
const chiUpper = define("CHISQ.DIST.RT", "number number", (x, df) =>
  badChi(x, df) ? NUM : incompleteGamma(degrees(df) / 2, x / 2).upper,
);
const chiUpperInverse = define("CHISQ.INV.RT", "number number", (p, df) =>
  p <= 0 || p > 1 || badChi(0, df)
    ? NUM
    : p === 1
      ? 0
      : invertAbove((x) => -incompleteGamma(degrees(df) / 2, x / 2).upper, -p, 0, degrees(df)),
);
const tTestFunction = defineIn("T.TEST", "array array number number", tTest);
const chiTestFunction = defineIn("CHISQ.TEST", "array array", chiTest);
const fTestFunction = defineIn("F.TEST", "array array", fTest);

export const samplingDistributions: readonly WorksheetFunction[] = [
  define("T.DIST", "number number boolean", (t, df, cumulative) =>
    degrees(df) < 1 ? (cumulative ? NUM : DIV0) : cumulative ? lowerT(t, degrees(df)) : densityT(t, degrees(df)),
  ),
  define("T.DIST.RT", "number number", (t, df) => (degrees(df) < 1 ? NUM : 1 - lowerT(t, degrees(df)))),
  define("T.DIST.2T", "number number", (t, df) => (t < 0 || degrees(df) < 1 ? NUM : 2 * tailT(t, degrees(df)))),
  define("TDIST", "number number number", (t, df, tails) => {
    const sides = Math.trunc(tails);
    return t < 0 || degrees(df) < 1 || (sides !== 1 && sides !== 2) ? NUM : sides * tailT(t, degrees(df));
  }),
  define("T.INV", "number number", inverseT),
  tInverse2,
  alias("TINV", tInverse2),
  tTestFunction,
  alias("TTEST", tTestFunction),
  define("F.DIST", "number number number boolean", (x, d1, d2, cumulative) =>
    badF(x, d1, d2) ? NUM : cumulative ? lowerF(x, degrees(d1), degrees(d2)) : densityF(x, degrees(d1), degrees(d2)),
  ),
  fUpper,
  alias("FDIST", fUpper),
  define("F.INV", "number number number", (p, d1, d2) =>
    p < 0 || p >= 1 || badF(0, d1, d2)
      ? NUM
      : p === 0
        ? 0
        : invertAbove((x) => lowerF(x, degrees(d1), degrees(d2)), p, 0, 1),
  ),
  fUpperInverse,
  alias("FINV", fUpperInverse),
  fTestFunction,
  alias("FTEST", fTestFunction),
  define("CHISQ.DIST", "number number boolean", (x, df, cumulative) =>
    badChi(x, df) ? NUM : cumulative ? incompleteGamma(degrees(df) / 2, x / 2).lower : densityChi(x, degrees(df)),
  ),
  chiUpper,
  alias("CHIDIST", chiUpper),
  define("CHISQ.INV", "number number", (p, df) =>
    p < 0 || p >= 1 || badChi(0, df)
      ? NUM
      : p === 0
        ? 0
        : invertAbove((x) => incompleteGamma(degrees(df) / 2, x / 2).lower, p, 0, degrees(df)),
  ),
  chiUpperInverse,
  alias("CHIINV", chiUpperInverse),
  chiTestFunction,
  alias("CHITEST", chiTestFunction),
  define("CONFIDENCE.T", "number number number", (alpha, deviation, size) => {
    const n = Math.trunc(size);
    if (n === 1) return DIV0;
    const t = deviation <= 0 || n < 1 || alpha <= 0 || alpha >= 1 ? NUM : inverseTwoTails(alpha, n - 1);
    return t instanceof CellError ? t : (t * deviation) / Math.sqrt(n);
  }),
];
