import { CellError } from "../../units/cell.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { alias, define, defineIn } from "./define.ts";
import { invert, invertAbove } from "./invert.ts";
import { numbersOf } from "./numbers.ts";
import {
  erf,
  erfc,
  gamma,
  incompleteBeta,
  incompleteGamma,
  logGamma,
  normal,
  normalDensity,
} from "./special-functions.ts";
import { meanOf, varianceOf } from "./statistics.ts";

/** Quantile of the standard normal distribution, 0 < p < 1. */
function normalInverse(p: number): number | CellError {
  if (p <= 0 || p >= 1) return NUM;
  if (p === 0.5) return 0;
  // The upper tail is found by symmetry, where the function keeps its digits.
  if (p > 0.5) {
    const lower = normalInverse(1 - p);
    return lower instanceof CellError ? lower : -lower;
  }
  return invert(normal, p, -40, 0);
}

const scaled = (z: number | CellError, mean: number, deviation: number): number | CellError =>
  z instanceof CellError ? z : mean + deviation * z;

const normalDist = (x: number, mean: number, deviation: number, cumulative: boolean): number | CellError => {
  if (deviation <= 0) return NUM;
  const z = (x - mean) / deviation;
  return cumulative ? normal(z) : normalDensity(z) / deviation;
};

const logNormal = (x: number, mean: number, deviation: number, cumulative: boolean): number | CellError => {
  if (x <= 0 || deviation <= 0) return NUM;
  const z = (Math.log(x) - mean) / deviation;
  return cumulative ? normal(z) : normalDensity(z) / (x * deviation);
};

const logNormalInverse = (p: number, mean: number, deviation: number): number | CellError => {
  const z = deviation <= 0 ? NUM : normalInverse(p);
  return z instanceof CellError ? z : Math.exp(mean + deviation * z);
};

const gammaDist = (x: number, alpha: number, beta: number, cumulative: boolean): number | CellError => {
  if (x < 0 || alpha <= 0 || beta <= 0) return NUM;
  if (cumulative) return incompleteGamma(alpha, x / beta).lower;
  if (x === 0) return alpha === 1 ? 1 / beta : alpha < 1 ? NUM : 0;
  return Math.exp((alpha - 1) * Math.log(x) - x / beta - alpha * Math.log(beta) - logGamma(alpha));
};

const gammaInverse = (p: number, alpha: number, beta: number): number | CellError => {
  if (p < 0 || p >= 1 || alpha <= 0 || beta <= 0) return NUM;
  if (p === 0) return 0;
  const x = invertAbove((v) => incompleteGamma(alpha, v).lower, p, 0, alpha + 1);
  return x instanceof CellError ? x : x * beta;
};

const betaDist = (
  x: number,
  alpha: number,
  beta: number,
  cumulative: boolean,
  low: number,
  high: number,
): number | CellError => {
  if (alpha <= 0 || beta <= 0 || x < low || x > high || low === high) return NUM;
  const u = (x - low) / (high - low);
  if (cumulative) return incompleteBeta(u, alpha, beta);
  const log =
    (alpha - 1) * Math.log(u) + (beta - 1) * Math.log1p(-u) + logGamma(alpha + beta) - logGamma(alpha) - logGamma(beta);
  return Math.exp(log) / (high - low);
};

const betaInverse = (p: number, alpha: number, beta: number, low = 0, high = 1): number | CellError => {
  if (p <= 0 || p >= 1 || alpha <= 0 || beta <= 0) return NUM;
  return scaled(
    invert((u) => incompleteBeta(u, alpha, beta), p, 0, 1),
    low,
    high - low,
  );
};

const exponential = (x: number, rate: number, cumulative: boolean): number | CellError =>
  x < 0 || rate <= 0 ? NUM : cumulative ? -Math.expm1(-rate * x) : rate * Math.exp(-rate * x);

const weibull = (x: number, shape: number, scale: number, cumulative: boolean): number | CellError => {
  if (x < 0 || shape <= 0 || scale <= 0) return NUM;
  const u = (x / scale) ** shape;
  return cumulative ? -Math.expm1(-u) : (shape / scale) * (x / scale) ** (shape - 1) * Math.exp(-u);
};

const confidence = (alpha: number, deviation: number, size: number): number | CellError => {
  const n = Math.trunc(size);
  const z = alpha <= 0 || alpha >= 1 || deviation <= 0 || n < 1 ? NUM : normalInverse(alpha / 2);
  return z instanceof CellError ? z : (-z * deviation) / Math.sqrt(n);
};

const normDist = define("NORM.DIST", "number number number boolean", normalDist);
const normInv = define("NORM.INV", "number number number", (p, mean, deviation) =>
  deviation <= 0 ? NUM : scaled(normalInverse(p), mean, deviation),
);
const normSInv = define("NORM.S.INV", "number", normalInverse);
const gammaDistribution = define("GAMMA.DIST", "number number number boolean", gammaDist);
const gammaInv = define("GAMMA.INV", "number number number", gammaInverse);
const betaInv = define("BETA.INV", "number number number [number?] [number?]", betaInverse);
const expon = define("EXPON.DIST", "number number boolean", exponential);
const weibullDist = define("WEIBULL.DIST", "number number number boolean", weibull);
const confidenceNorm = define("CONFIDENCE.NORM", "number number number", confidence);
const logInv = define("LOGNORM.INV", "number number number", logNormalInverse);
const erfFunction = define("ERF", "number [number?]", (a, b) => (b === undefined ? erf(a) : erf(b) - erf(a)));
const erfcFunction = define("ERFC", "number", erfc);
const gammaLn = define("GAMMALN", "number", (x) => (x <= 0 ? NUM : logGamma(x)));
const zTest = defineIn("Z.TEST", "array number [number?]", (frame, array, x, sigma) => {
  const data = numbersOf(frame, [array]);
  if (data.length === 0) return NUM;
  const deviation = sigma ?? Math.sqrt(varianceOf(data, false));
  return deviation === 0 ? DIV0 : normal(-(meanOf(data) - x) / (deviation / Math.sqrt(data.length)));
});

export const distributions: readonly WorksheetFunction[] = [
  normDist,
  alias("NORMDIST", normDist),
  normInv,
  alias("NORMINV", normInv),
  define("NORM.S.DIST", "number boolean", (z, cumulative) => (cumulative ? normal(z) : normalDensity(z))),
  define("NORMSDIST", "number", normal),
  normSInv,
  alias("NORMSINV", normSInv),
  define("PHI", "number", normalDensity),
  define("GAUSS", "number", (z) => normal(z) - 0.5),
  define("LOGNORM.DIST", "number number number boolean", logNormal),
  define("LOGNORMDIST", "number number number", (x, mean, deviation) => logNormal(x, mean, deviation, true)),
  logInv,
  alias("LOGINV", logInv),
  gammaDistribution,
  alias("GAMMADIST", gammaDistribution),
  gammaInv,
  alias("GAMMAINV", gammaInv),
  gammaLn,
  alias("GAMMALN.PRECISE", gammaLn),
  define("GAMMA", "number", (x) => {
    if (x === 0 || (x < 0 && Number.isInteger(x))) return NUM;
    const value = gamma(x);
    return Number.isFinite(value) ? value : NUM;
  }),
  define(
    "BETA.DIST",
    "number number number boolean [number?] [number?]",
    (x, alpha, beta, cumulative, low = 0, high = 1) => betaDist(x, alpha, beta, cumulative, low, high),
  ),
  define("BETADIST", "number number number [number?] [number?]", (x, alpha, beta, low = 0, high = 1) =>
    betaDist(x, alpha, beta, true, low, high),
  ),
  betaInv,
  alias("BETAINV", betaInv),
  expon,
  alias("EXPONDIST", expon),
  weibullDist,
  alias("WEIBULL", weibullDist),
  confidenceNorm,
  alias("CONFIDENCE", confidenceNorm),
  erfFunction,
  define("ERF.PRECISE", "number", erf),
  erfcFunction,
  alias("ERFC.PRECISE", erfcFunction),
  zTest,
  alias("ZTEST", zTest),
  define("FISHER", "number", (x) => (Math.abs(x) >= 1 ? NUM : Math.atanh(x))),
  define("FISHERINV", "number", (y) => Math.tanh(y)),
];
