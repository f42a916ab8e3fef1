import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt, topLeft, widthOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NA, NUM, REF, VALUE, type Value } from "../evaluate/value.ts";
import { alias, defineIn, fail } from "./define.ts";
import { leastSquares } from "./least-squares.ts";
import { meanOf } from "./statistics.ts";

interface Pairs {
  readonly x: number[];
  readonly y: number[];
}

/** Two arrays of the same size, pairs that are not both numbers left out. */
function pairs(frame: Frame, first: Value, second: Value): Pairs {
  for (const given of [first, second]) if (given instanceof CellError) fail(given);
  const [a, b] = [toMatrix(first, frame).flat(), toMatrix(second, frame).flat()];
  if (a.length !== b.length) fail(NA);
  const x: number[] = [];
  const y: number[] = [];
  a.forEach((u, i) => {
    const v = itemAt(b, i);
    if (u instanceof CellError) fail(u);
    if (v instanceof CellError) fail(v);
    if (typeof u !== "number" || typeof v !== "number") return;
    x.push(u);
    y.push(v);
  });
  return { x, y };
}

/** The known y comes first in some functions; errors speak in the order of the arguments. */
const turned = ({ x, y }: Pairs): Pairs => ({ x: y, y: x });

interface Sums {
  readonly n: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

function sums({ x, y }: Pairs): Sums {
  const n = x.length;
  if (n === 0) fail(DIV0);
  const [meanX, meanY] = [meanOf(x), meanOf(y)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [u, v] = [itemAt(x, i) - meanX, itemAt(y, i) - meanY];
    xx += u * u;
    yy += v * v;
    xy += u * v;
  }
  return { n, meanX, meanY, xx, yy, xy };
}

const correlation = (s: Sums): number => (s.xx === 0 || s.yy === 0 ? fail(DIV0) : s.xy / Math.sqrt(s.xx * s.yy));

/** A function of two arrays by their sums; `swapped` for those that take the known y first. */
const ofPairs = (name: string, swapped: boolean, compute: (s: Sums) => number | CellError): WorksheetFunction =>
  defineIn(name, "array array", (frame, a, b) =>
    compute(sums(swapped ? turned(pairs(frame, a, b)) : pairs(frame, a, b))),
  );

function slope(s: Sums): number {
  return s.xx === 0 ? fail(DIV0) : s.xy / s.xx;
}

const flagOf = (frame: Frame, value: Value, otherwise: boolean): boolean => {
  if (value === undefined) return otherwise;
  const flag: CellValue = topLeft(toMatrix(value, frame));
  return flag instanceof CellError ? fail(flag) : Boolean(flag);
};

interface Known {
  readonly y: number[];
  /** One row per observation. */
  readonly x: number[][];
  /** Observations stand side by side in one row. */
  readonly sideways: boolean;
}

const number = (v: CellValue): number => (typeof v === "number" ? v : fail(v instanceof CellError ? v : VALUE));

function known(frame: Frame, knownY: Value, knownX: Value): Known {
  const ys = toMatrix(knownY, frame);
  const y = ys.flat().map(number);
  const sideways = ys.length === 1 && widthOf(ys) > 1;
  if (knownX === undefined) return { y, x: y.map((_, i) => [i + 1]), sideways };
  const xs = toMatrix(knownX, frame).map((row) => row.map(number));
  if (xs.length === ys.length && widthOf(xs) === widthOf(ys)) return { y, x: xs.flat().map((v) => [v]), sideways };
  if (!sideways && xs.length === y.length) return { y, x: xs, sideways };
  if (sideways && widthOf(xs) === y.length) return { y, x: y.map((_, i) => xs.map((row) => itemAt(row, i))), sideways };
  return fail(REF);
}

/** A straight line through the data, or with "log" through their logarithms; `shown` brings an answer back. */
function fitted(frame: Frame, knownY: Value, knownX: Value, constant: Value, scale: Scale) {
  const data = known(frame, knownY, knownX);
  const isLog = scale === "log";
  if (isLog && data.y.some((v) => v <= 0)) fail(NUM);
  const withConstant = flagOf(frame, constant, true);
  const fit = leastSquares(isLog ? data.y.map(Math.log) : data.y, data.x, withConstant);
  return { data, fit, withConstant, shown: isLog ? Math.exp : (v: number): number => v };
}
type Scale = "plain" | "log";

/** Coefficients from last to first and the constant, with their statistics on request. */
const lineFit = (name: string, scale: Scale): WorksheetFunction =>
  defineIn(name, "array [array] [array] [array]", (frame, y, x, constant, stats): CellMatrix => {
    const { fit, withConstant, shown } = fitted(frame, y, x, constant, scale);
    const coefficients = [...fit.slopes].reverse().map(shown).concat(shown(fit.constant));
    if (!flagOf(frame, stats, false)) return [coefficients];
    const width = coefficients.length;
    const pad = (row: CellValue[]): CellValue[] => [...row, ...new Array<CellValue>(width - row.length).fill(NA)];
    return [
      coefficients,
      [...[...fit.slopeErrors].reverse(), withConstant ? fit.constantError : NA],
      pad([fit.r2, fit.standardError]),
      pad([fit.f, fit.freedom]),
      pad([fit.regression, fit.residual]),
    ];
  });

const trend = (name: string, scale: Scale): WorksheetFunction =>
  defineIn(name, "array [array] [array] [array]", (frame, y, x, newX, constant): CellMatrix => {
    const { data, fit, shown } = fitted(frame, y, x, constant, scale);
    const at = (xs: readonly number[]): number =>
      shown(xs.reduce((sum, v, i) => sum + v * (fit.slopes[i] ?? 0), fit.constant));
    if (newX === undefined) {
      const line = data.x.map(at);
      return data.sideways ? [line] : line.map((v) => [v]);
    }
    const rows = toMatrix(newX, frame).map((row) => row.map(number));
    if (fit.slopes.length === 1) return rows.map((row) => row.map((v) => at([v])));
    if (!data.sideways) return rows.map((row) => [at(row)]);
    return [firstOf(rows).map((_, i) => at(rows.map((row) => itemAt(row, i))))];
  });

const forecast = defineIn("FORECAST.LINEAR", "number array array", (frame, x, knownY, knownX) => {
  const s = sums(turned(pairs(frame, knownY, knownX)));
  return s.meanY + slope(s) * (x - s.meanX);
});
const pearson = ofPairs("PEARSON", false, correlation);
const covarianceP = ofPairs("COVARIANCE.P", false, (s) => s.xy / s.n);

export const regression: readonly WorksheetFunction[] = [
  pearson,
  alias("CORREL", pearson),
  ofPairs("RSQ", true, (s) => correlation(s) ** 2),
  ofPairs("SLOPE", true, slope),
  ofPairs("INTERCEPT", true, (s) => s.meanY - slope(s) * s.meanX),
  ofPairs("STEYX", true, (s) => (s.n < 3 ? DIV0 : Math.sqrt((s.yy - slope(s) * s.xy) / (s.n - 2)))),
  covarianceP,
  alias("COVAR", covarianceP),
  ofPairs("COVARIANCE.S", false, (s) => (s.n < 2 ? DIV0 : s.xy / (s.n - 1))),
  forecast,
  alias("FORECAST", forecast),
  lineFit("LINEST", "plain"),
  lineFit("LOGEST", "log"),
  trend("TREND", "plain"),
  trend("GROWTH", "log"),
];
