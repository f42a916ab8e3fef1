import { CellError } from "../../units/cell.ts";
import { withinLimit } from "../evaluate/array-limit.ts";
import { finite } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { power } from "../evaluate/operators.ts";
import { DIV0, NUM, VALUE } from "../evaluate/value.ts";
import { define, defineIn } from "./define.ts";
import { numbersOf } from "./numbers.ts";

const DEGREE = Math.PI / 180;

const angle = (name: string, compute: (x: number) => number): WorksheetFunction =>
  define(name, "number", (x) => (Math.abs(x) >= 2 ** 27 ? NUM : compute(x)));

/** 1/sin and its kin: no answer where the divisor is zero. */
const reciprocal = (name: string, divisor: (x: number) => number): WorksheetFunction =>
  define(name, "number", (x) => {
    if (Math.abs(x) >= 2 ** 27) return NUM;
    const below = divisor(x);
    return below === 0 ? DIV0 : 1 / below;
  });

const within = (name: string, low: number, high: number, compute: (x: number) => number): WorksheetFunction =>
  define(name, "number", (x) => (x < low || x > high ? NUM : finite(compute(x), NUM)));

/** n! by steps of `by`: 1 for FACT, 2 for FACTDOUBLE. */
function factorial(x: number, by: number): number | CellError {
  const n = Math.trunc(x);
  if (n < (by === 2 ? -1 : 0) || n > (by === 2 ? 300 : 170)) return NUM;
  let product = 1;
  for (let k = n; k > 1; k -= by) product *= k;
  return finite(product, NUM);
}

function combinations(n: number, k: number): number | CellError {
  const [all, some] = [Math.trunc(n), Math.trunc(k)];
  if (all < 0 || some < 0 || some > all) return NUM;
  let result = 1;
  // Every step at least doubles what is not yet beyond all numbers: a thousand steps, whatever is asked.
  for (let i = 1; i <= Math.min(some, all - some) && Number.isFinite(result); i++)
    result = (result * (all - Math.min(some, all - some) + i)) / i;
  return finite(Math.round(result) < 2 ** 53 ? Math.round(result) : result, NUM);
}

function permutations(n: number, k: number): number | CellError {
  const [all, some] = [Math.trunc(n), Math.trunc(k)];
  if (all < 0 || some < 0 || some > all) return NUM;
  let result = 1;
  for (let i = 0; i < some && Number.isFinite(result); i++) result *= all - i;
  return finite(result, NUM);
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

function wholeNumbers(numbers: readonly number[]): number[] | CellError {
  const whole = numbers.map(Math.trunc);
  return whole.some((n) => n < 0 || n >= 2 ** 53) ? NUM : whole;
}

export const mathematics: readonly WorksheetFunction[] = [
  define("ABS", "number", (x) => Math.abs(x)),
  define("SIGN", "number", (x) => Math.sign(x)),
  define("SQRT", "number", (x) => (x < 0 ? NUM : Math.sqrt(x))),
  define("SQRTPI", "number", (x) => (x < 0 ? NUM : Math.sqrt(x * Math.PI))),
  define("EXP", "number", (x) => finite(Math.exp(x), NUM)),
  define("LN", "number", (x) => (x <= 0 ? NUM : Math.log(x))),
  define("LOG10", "number", (x) => (x <= 0 ? NUM : Math.log10(x))),
  define("LOG", "number [number?]", (x, base = 10) => {
    if (x <= 0 || base <= 0) return NUM;
    if (base === 1) return DIV0;
    return base === 10 ? Math.log10(x) : base === 2 ? Math.log2(x) : Math.log(x) / Math.log(base);
  }),
  define("POWER", "number number", power),
  define("PI", "", () => Math.PI),
  angle("SIN", Math.sin),
  angle("COS", Math.cos),
  angle("TAN", Math.tan),
  reciprocal("CSC", Math.sin),
  reciprocal("SEC", Math.cos),
  reciprocal("COT", Math.tan),
  within("ASIN", -1, 1, Math.asin),
  within("ACOS", -1, 1, Math.acos),
  define("ATAN", "number", (x) => Math.atan(x)),
  define("ACOT", "number", (x) => Math.PI / 2 - Math.atan(x)),
  define("ATAN2", "number number", (x, y) => (x === 0 && y === 0 ? DIV0 : Math.atan2(y, x))),
  define("SINH", "number", (x) => finite(Math.sinh(x), NUM)),
  define("COSH", "number", (x) => finite(Math.cosh(x), NUM)),
  define("TANH", "number", (x) => Math.tanh(x)),
  reciprocal("CSCH", Math.sinh),
  reciprocal("SECH", Math.cosh),
  reciprocal("COTH", Math.tanh),
  define("ASINH", "number", (x) => Math.asinh(x)),
  within("ACOSH", 1, Number.MAX_VALUE, Math.acosh),
  define("ATANH", "number", (x) => (Math.abs(x) >= 1 ? NUM : Math.atanh(x))),
  define("ACOTH", "number", (x) => (Math.abs(x) <= 1 ? NUM : Math.atanh(1 / x))),
  define("RADIANS", "number", (x) => x * DEGREE),
  define("DEGREES", "number", (x) => x / DEGREE),
  define("FACT", "number", (x) => factorial(x, 1)),
  define("FACTDOUBLE", "number", (x) => factorial(x, 2)),
  define("COMBIN", "number number", combinations),
  define("COMBINA", "number number", (n, k) => {
    const [all, some] = [Math.trunc(n), Math.trunc(k)];
    if (all < 0 || some < 0 || (all === 0 && some > 0)) return NUM;
    return some === 0 ? 1 : combinations(all + some - 1, some);
  }),
  define("PERMUT", "number number", permutations),
  define("PERMUTATIONA", "number number", (n, k) =>
    n < 0 || k < 0 ? NUM : finite(Math.trunc(n) ** Math.trunc(k), NUM),
  ),
  defineIn("GCD", "range...", (frame, ...args) => {
    const whole = wholeNumbers(numbersOf(frame, args));
    return whole instanceof CellError ? whole : whole.reduce(gcd, 0);
  }),
  defineIn("LCM", "range...", (frame, ...args) => {
    const whole = wholeNumbers(numbersOf(frame, args));
    if (whole instanceof CellError) return whole;
    return whole.some((n) => n === 0)
      ? 0
      : finite(
          whole.reduce((a, b) => (a / gcd(a, b)) * b, 1),
          NUM,
        );
  }),
  defineIn("MULTINOMIAL", "range...", (frame, ...args) => {
    const whole = wholeNumbers(numbersOf(frame, args));
    if (whole instanceof CellError) return whole;
    // The largest first: it divides out, and from then on every step at least doubles the product.
    const [largest = 0, ...rest] = whole.sort((a, b) => b - a);
    let total = largest;
    let product = 1;
    for (const n of rest) {
      for (let i = 1; i <= n && Number.isFinite(product); i++) product = (product * ++total) / i;
    }
    return finite(Math.round(product), NUM);
  }),
  defineIn("SERIESSUM", "number number number array", (frame, x, n, m, coefficients) =>
    finite(
      numbersOf(frame, [coefficients]).reduce((sum, a, i) => sum + a * x ** (n + i * m), 0),
      NUM,
    ),
  ),
  define("BASE", "number number [number]", (x, radix, least = 0) => {
    const [n, base] = [Math.trunc(x), Math.trunc(radix)];
    if (n < 0 || n >= 2 ** 53 || base < 2 || base > 36 || least < 0 || least > 255) return NUM;
    return n.toString(base).toUpperCase().padStart(Math.trunc(least), "0");
  }),
  define("DECIMAL", "text number", (text, radix) => {
    const base = Math.trunc(radix);
    if (base < 2 || base > 36) return NUM;
    const digits = text
      .trim()
      .toLowerCase()
      .replace(base === 16 ? /^0x/ : /^$/, "");
    let value = 0;
    for (const digit of digits) {
      const n = Number.parseInt(digit, 36);
      if (Number.isNaN(n) || n >= base) return NUM;
      value = value * base + n;
    }
    return finite(value, NUM);
  }),
  define("DELTA", "number [number]", (a, b = 0) => (a === b ? 1 : 0)),
  define("GESTEP", "number [number]", (a, step = 0) => (a >= step ? 1 : 0)),
  define("MUNIT", "number", (size) => {
    const n = Math.trunc(size);
    if (n < 1) return VALUE;
    withinLimit(n, n);
    return Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
  }),
];
