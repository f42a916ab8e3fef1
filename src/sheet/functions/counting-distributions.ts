import type { CellError } from "../../units/cell.ts";
import { withinSteps } from "../evaluate/array-limit.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NUM } from "../evaluate/value.ts";
import { alias, define } from "./define.ts";
import { incompleteBeta, incompleteGamma, logGamma } from "./special-functions.ts";

/** ln of "n over k". */
const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

const choose = (n: number, k: number): number => {
  if (k < 0 || k > n) return 0;
  let result = 1;
  for (let i = 1; i <= Math.min(k, n - k) && Number.isFinite(result); i++)
    result = (result * (n - Math.min(k, n - k) + i)) / i;
  return Number.isFinite(result) ? result : Math.exp(logChoose(n, k));
};

const binomialMass = (k: number, n: number, p: number): number =>
  p === 0 || p === 1
    ? Number(k === n * p)
    : n < 1000
      ? choose(n, k) * p ** k * (1 - p) ** (n - k)
      : Math.exp(logChoose(n, k) + k * Math.log(p) + (n - k) * Math.log1p(-p));

const binomialLower = (k: number, n: number, p: number): number => (k >= n ? 1 : 1 - incompleteBeta(p, k + 1, n - k));

function binomial(successes: number, trials: number, p: number, cumulative: boolean): number | CellError {
  const [k, n] = [Math.trunc(successes), Math.trunc(trials)];
  if (k < 0 || k > n || p < 0 || p > 1) return NUM;
  return cumulative ? binomialLower(k, n, p) : binomialMass(k, n, p);
}

/** From the largest number a cell holds down to one. */
const MOST_HALVINGS = 1100;

/** Smallest k whose cumulative probability reaches the criterion. */
function binomialInverse(trials: number, p: number, alpha: number): number | CellError {
  const n = Math.trunc(trials);
  if (n < 0 || p < 0 || p > 1 || alpha < 0 || alpha > 1) return NUM;
  if (n < 1000) {
    let sum = 0;
    for (let k = 0; k <= n; k++) {
      sum += binomialMass(k, n, p);
      if (sum >= alpha) return k;
    }
    return n;
  }
  let [low, high] = [0, n];
  // Beyond 2^53 one more is the same number: the halvings are counted.
  for (let halvings = 0; low < high && halvings < MOST_HALVINGS; halvings++) {
    const middle = Math.floor((low + high) / 2);
    if (binomialLower(middle, n, p) >= alpha) high = middle;
    else low = middle + 1;
  }
  return low;
}

function poisson(events: number, mean: number, cumulative: boolean): number | CellError {
  const k = Math.trunc(events);
  if (k < 0 || mean < 0) return NUM;
  if (cumulative) return mean === 0 ? 1 : incompleteGamma(k + 1, mean).upper;
  return mean === 0 ? Number(k === 0) : Math.exp(k * Math.log(mean) - mean - logGamma(k + 1));
}

function hypergeometric(k: number, sample: number, successes: number, population: number): number | CellError {
  const [x, n, m, all] = [k, sample, successes, population].map(Math.trunc) as [number, number, number, number];
  if (x < 0 || x > Math.min(n, m) || x < n - all + m || n <= 0 || n > all || m <= 0 || m > all || all <= 0) return NUM;
  return (choose(m, x) * choose(all - m, n - x)) / choose(all, n);
}

function negativeBinomial(failures: number, successes: number, p: number, cumulative: boolean): number | CellError {
  const [f, s] = [Math.trunc(failures), Math.trunc(successes)];
  if (f < 0 || s < 1 || p < 0 || p > 1) return NUM;
  return cumulative ? incompleteBeta(p, s, f + 1) : choose(f + s - 1, s - 1) * p ** s * (1 - p) ** f;
}

const binomDist = define("BINOM.DIST", "number number number boolean", binomial);
const binomInv = define("BINOM.INV", "number number number", binomialInverse);
const poissonDist = define("POISSON.DIST", "number number boolean", poisson);

export const countingDistributions: readonly WorksheetFunction[] = [
  binomDist,
  alias("BINOMDIST", binomDist),
  define("BINOM.DIST.RANGE", "number number number [number?]", (trials, p, low, high) => {
    const [n, a, b] = [Math.trunc(trials), Math.trunc(low), Math.trunc(high ?? low)];
    if (n < 0 || p < 0 || p > 1 || a < 0 || a > n || b < a || b > n) return NUM;
    withinSteps(b - a);
    let sum = 0;
    // Counted from 0: beyond 2^53 one more is the same number, and a loop to it never ends.
    for (let i = 0; i <= b - a; i++) sum += binomialMass(a + i, n, p);
    return sum;
  }),
  binomInv,
  alias("CRITBINOM", binomInv),
  poissonDist,
  alias("POISSON", poissonDist),
  define("HYPGEOM.DIST", "number number number number boolean", (k, sample, successes, population, cumulative) => {
    if (!cumulative) return hypergeometric(k, sample, successes, population);
    withinSteps(k);
    let sum = 0;
    const least = Math.max(0, Math.trunc(sample + successes - population));
    for (let i = 0; i <= Math.trunc(k) - least; i++) {
      const p = hypergeometric(least + i, sample, successes, population);
      if (typeof p !== "number") return p;
      sum += p;
    }
    return k < 0 ? NUM : sum;
  }),
  define("HYPGEOMDIST", "number number number number", hypergeometric),
  define("NEGBINOM.DIST", "number number number boolean", negativeBinomial),
  define("NEGBINOMDIST", "number number number", (failures, successes, p) =>
    negativeBinomial(failures, successes, p, false),
  ),
];
