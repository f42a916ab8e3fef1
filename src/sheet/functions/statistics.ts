import { CellError, type CellMatrix } from "../../units/cell.ts";
import { firstOf, itemAt, lastOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NA, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { alias, define, defineIn, fail } from "./define.ts";
import { numbersA, numbersOf } from "./numbers.ts";

export const sumOf = (x: readonly number[]): number => x.reduce((a, b) => a + b, 0);
export const meanOf = (x: readonly number[]): number => sumOf(x) / x.length;

/** Sum of squared deviations from the mean, in two passes (Chan, Golub, LeVeque 1983). */
export function squaredDeviations(x: readonly number[]): number {
  const mean = meanOf(x);
  return x.reduce((sum, v) => sum + (v - mean) ** 2, 0);
}

export const varianceOf = (x: readonly number[], population: boolean): number => {
  const n = population ? x.length : x.length - 1;
  return n < 1 ? fail(DIV0) : squaredDeviations(x) / n;
};

const sorted = (x: readonly number[]): number[] => [...x].sort((a, b) => a - b);

type Collect = (frame: Frame, args: readonly Value[]) => number[];

const spread = (name: string, population: boolean, root: boolean, collect: Collect = numbersOf): WorksheetFunction =>
  defineIn(name, "range...", (frame, ...args) => {
    const variance = varianceOf(collect(frame, args), population);
    return root ? Math.sqrt(variance) : variance;
  });

/** PERCENTILE.INC and .EXC: linear between order statistics (definitions 7 and 6 of Hyndman and Fan 1996). */
function percentile(x: readonly number[], p: number, exclusive: boolean): number | CellError {
  const n = x.length;
  if (n === 0 || p < 0 || p > 1) return NUM;
  const order = sorted(x);
  const position = exclusive ? p * (n + 1) - 1 : p * (n - 1);
  if (position < -1e-12 || position > n - 1 + 1e-12) return NUM;
  const low = Math.min(n - 1, Math.max(0, Math.floor(position)));
  const below = itemAt(order, low);
  return position <= low ? below : below + (position - low) * ((order[low + 1] ?? below) - below);
}

function percentRank(x: readonly number[], value: number, digits: number, exclusive: boolean): number | CellError {
  const n = x.length;
  if (n === 0 || digits < 1) return NUM;
  const order = sorted(x);
  if (value < firstOf(order) || value > lastOf(order)) return NA;
  const below = order.filter((v) => v < value).length;
  const rankOf = (i: number): number => (exclusive ? (i + 1) / (n + 1) : n === 1 ? 1 : i / (n - 1));
  const at = order[below];
  const scale = 10 ** Math.trunc(digits);
  let rank: number;
  if (at === value) rank = rankOf(below);
  else {
    const x0 = itemAt(order, below - 1);
    rank = rankOf(below - 1) + ((value - x0) / (itemAt(order, below) - x0)) * (rankOf(below) - rankOf(below - 1));
  }
  return Math.floor(rank * scale + 1e-9) / scale;
}

function nth(x: readonly number[], k: number, largest: boolean): number | CellError {
  const position = Math.ceil(k);
  if (position < 1 || position > x.length) return NUM;
  const order = sorted(x);
  return largest ? itemAt(order, x.length - position) : itemAt(order, position - 1);
}

function rank(x: readonly number[], value: number, ascending: boolean, average: boolean): number | CellError {
  const ahead = x.filter((v) => (ascending ? v < value : v > value)).length;
  const same = x.filter((v) => v === value).length;
  if (same === 0) return NA;
  return ahead + 1 + (average ? (same - 1) / 2 : 0);
}

/** Values that occur most often, in order of first appearance; none repeats: #N/A. */
function modes(x: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const v of x) counts.set(v, (counts.get(v) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  return most < 2 ? fail(NA) : [...counts].filter(([, n]) => n === most).map(([v]) => v);
}

const medianOf = (x: readonly number[]): number | CellError => {
  if (x.length === 0) return NUM;
  const order = sorted(x);
  const half = x.length >> 1;
  const middle = itemAt(order, half);
  return x.length % 2 ? middle : (itemAt(order, half - 1) + middle) / 2;
};

/** Standardized third or fourth moment sums, on the sample deviation. */
const momentSum = (x: readonly number[], power: number, population: boolean): number => {
  const mean = meanOf(x);
  const deviation = Math.sqrt(varianceOf(x, population));
  if (deviation === 0) fail(DIV0);
  return x.reduce((sum, v) => sum + ((v - mean) / deviation) ** power, 0);
};

const positive = (x: readonly number[]): readonly number[] => (x.length === 0 || x.some((v) => v <= 0) ? fail(NUM) : x);

/** MODE takes arrays: text typed into the call is refused even where it reads as a number. */
const ofArrays = (frame: Frame, args: readonly Value[]): number[] =>
  args.some((arg) => typeof arg === "string") ? fail(VALUE) : numbersOf(frame, args);

const mode = defineIn("MODE.SNGL", "array...", (frame, ...args) => firstOf(modes(ofArrays(frame, args))));
const rankEqual = defineIn("RANK.EQ", "number array [number]", (frame, v, ref, order = 0) =>
  rank(numbersOf(frame, [ref]), v, order !== 0, false),
);
const percentileInc = defineIn("PERCENTILE.INC", "array number", (frame, x, p) =>
  percentile(numbersOf(frame, [x]), p, false),
);
const quartileInc = defineIn("QUARTILE.INC", "array number", (frame, x, q) =>
  q < 0 || q >= 5 ? NUM : percentile(numbersOf(frame, [x]), Math.trunc(q) / 4, false),
);
const percentRankInc = defineIn("PERCENTRANK.INC", "array number [number]", (frame, x, v, digits = 3) =>
  percentRank(numbersOf(frame, [x]), v, digits, false),
);

export const statistics: readonly WorksheetFunction[] = [
  spread("STDEV.S", false, true),
  spread("STDEV", false, true),
  spread("STDEV.P", true, true),
  spread("STDEVP", true, true),
  spread("STDEVA", false, true, numbersA),
  spread("STDEVPA", true, true, numbersA),
  spread("VAR.S", false, false),
  spread("VAR", false, false),
  spread("VAR.P", true, false),
  spread("VARP", true, false),
  spread("VARA", false, false, numbersA),
  spread("VARPA", true, false, numbersA),
  defineIn("MEDIAN", "range...", (frame, ...args) => medianOf(numbersOf(frame, args))),
  mode,
  alias("MODE", mode),
  defineIn("MODE.MULT", "array...", (frame, ...args) => modes(ofArrays(frame, args)).map((v) => [v])),
  defineIn("LARGE", "array number", (frame, x, k) => nth(numbersOf(frame, [x]), k, true)),
  defineIn("SMALL", "array number", (frame, x, k) => nth(numbersOf(frame, [x]), k, false)),
  rankEqual,
  alias("RANK", rankEqual),
  defineIn("RANK.AVG", "number array [number]", (frame, v, ref, order = 0) =>
    rank(numbersOf(frame, [ref]), v, order !== 0, true),
  ),
  percentileInc,
  alias("PERCENTILE", percentileInc),
  defineIn("PERCENTILE.EXC", "array number", (frame, x, p) =>
    p <= 0 || p >= 1 ? NUM : percentile(numbersOf(frame, [x]), p, true),
  ),
  quartileInc,
  alias("QUARTILE", quartileInc),
  defineIn("QUARTILE.EXC", "array number", (frame, x, q) =>
    q < 1 || q >= 4 ? NUM : percentile(numbersOf(frame, [x]), Math.trunc(q) / 4, true),
  ),
  percentRankInc,
  alias("PERCENTRANK", percentRankInc),
  defineIn("PERCENTRANK.EXC", "array number [number]", (frame, x, v, digits = 3) =>
    percentRank(numbersOf(frame, [x]), v, digits, true),
  ),
  defineIn("GEOMEAN", "range...", (frame, ...args) => {
    const x = positive(numbersOf(frame, args));
    return Math.exp(sumOf(x.map(Math.log)) / x.length);
  }),
  defineIn("HARMEAN", "range...", (frame, ...args) => {
    const x = positive(numbersOf(frame, args));
    return x.length / sumOf(x.map((v) => 1 / v));
  }),
  defineIn("TRIMMEAN", "array number", (frame, array, share) => {
    const x = sorted(numbersOf(frame, [array]));
    if (share < 0 || share >= 1 || x.length === 0) return NUM;
    const cut = Math.floor((x.length * share) / 2 + 1e-12);
    return meanOf(x.slice(cut, x.length - cut));
  }),
  defineIn("AVEDEV", "range...", (frame, ...args) => {
    const x = numbersOf(frame, args);
    if (x.length === 0) return NUM;
    const mean = meanOf(x);
    return meanOf(x.map((v) => Math.abs(v - mean)));
  }),
  defineIn("DEVSQ", "range...", (frame, ...args) => {
    const x = numbersOf(frame, args);
    return x.length === 0 ? NUM : squaredDeviations(x);
  }),
  defineIn("SKEW", "range...", (frame, ...args) => {
    const x = numbersOf(frame, args);
    const n = x.length;
    return n < 3 ? DIV0 : (n / ((n - 1) * (n - 2))) * momentSum(x, 3, false);
  }),
  defineIn("SKEW.P", "range...", (frame, ...args) => {
    const x = numbersOf(frame, args);
    return x.length < 3 ? DIV0 : momentSum(x, 3, true) / x.length;
  }),
  defineIn("KURT", "range...", (frame, ...args) => {
    const x = numbersOf(frame, args);
    const n = x.length;
    if (n < 4) return DIV0;
    const lead = (n * (n + 1)) / ((n - 1) * (n - 2) * (n - 3));
    return lead * momentSum(x, 4, false) - (3 * (n - 1) ** 2) / ((n - 2) * (n - 3));
  }),
  define("STANDARDIZE", "number number number", (x, mean, deviation) =>
    deviation <= 0 ? NUM : (x - mean) / deviation,
  ),
  defineIn("FREQUENCY", "array array", (frame, data, bins): CellMatrix => {
    const limits = numbersOf(frame, [bins]);
    const order = limits.map((limit, i) => ({ limit, i })).sort((a, b) => a.limit - b.limit);
    const counts = new Array<number>(limits.length + 1).fill(0);
    for (const v of numbersOf(frame, [data])) {
      const bin = order.find(({ limit }) => v <= limit);
      const at = bin ? bin.i : limits.length;
      counts[at] = itemAt(counts, at) + 1;
    }
    return counts.map((n) => [n]);
  }),
  defineIn("PROB", "array array number [number]", (frame, x, p, low, high = low) => {
    const [values, chances] = [toMatrix(x, frame).flat(), toMatrix(p, frame).flat()];
    if (values.length !== chances.length) return NA;
    const broken = chances.find((chance) => chance instanceof CellError);
    if (broken instanceof CellError) return broken;
    const total = sumOf(chances.map(Number));
    if (chances.some((c) => Number(c) < 0 || Number(c) > 1) || Math.abs(total - 1) > 1e-7) return NUM;
    let sum = 0;
    values.forEach((v, i) => {
      if (v instanceof CellError) fail(v);
      if (typeof v !== "number") fail(VALUE);
      if (v >= low && v <= high) sum += Number(chances[i]);
    });
    return sum;
  }),
];
