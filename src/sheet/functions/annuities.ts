import { CellError } from "../../units/cell.ts";
import { withinSteps } from "../evaluate/array-limit.ts";
import { finite } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { define } from "./define.ts";

/** The annuity equation pv(1+r)^n + pmt(1+r*type)((1+r)^n - 1)/r + fv = 0 (Microsoft's description of PV). */
function payment(rate: number, periods: number, present: number, future: number, begin: number): number | CellError {
  if (periods === 0) return NUM;
  if (rate === 0) return -(present + future) / periods;
  const growth = (1 + rate) ** periods;
  return finite(-(present * growth + future) / ((1 + rate * begin) * ((growth - 1) / rate)), NUM);
}

function futureValue(rate: number, periods: number, pay: number, present: number, begin: number): number {
  if (rate === 0) return -(present + pay * periods);
  const growth = (1 + rate) ** periods;
  return -(present * growth + pay * (1 + rate * begin) * ((growth - 1) / rate));
}

function presentValue(rate: number, periods: number, pay: number, future: number, begin: number): number {
  if (rate === 0) return -(future + pay * periods);
  const growth = (1 + rate) ** periods;
  return -(future + pay * (1 + rate * begin) * ((growth - 1) / rate)) / growth;
}

function periodCount(rate: number, pay: number, present: number, future: number, begin: number): number | CellError {
  if (rate === 0) return pay === 0 ? NUM : -(present + future) / pay;
  const each = (pay * (1 + rate * begin)) / rate;
  const ratio = (each - future) / (each + present);
  return ratio <= 0 || rate <= -1 ? NUM : Math.log(ratio) / Math.log1p(rate);
}

/** The root that Newton's method reaches from a guess, where it reaches one. */
function newton(balance: (r: number) => number, guess: number): number | undefined {
  let r = guess;
  for (let i = 0; i < 100; i++) {
    const step = Math.max(1e-7, Math.abs(r) * 1e-6);
    const gradient = (balance(r + step) - balance(r - step)) / (2 * step);
    const next = r - balance(r) / gradient;
    if (!Number.isFinite(next) || next <= -1) return undefined;
    if (Math.abs(next - r) < 1e-14 * Math.max(1, Math.abs(next))) return next;
    r = next;
  }
  return Math.abs(balance(r)) < 1e-9 * Math.max(1, Math.abs(balance(0))) ? r : undefined;
}

/** The root between a guess and a place beyond it where the balance has the other sign. */
function bisected(balance: (r: number) => number, guess: number): number | undefined {
  let [low, high] = [guess, guess];
  const start = balance(guess);
  for (let i = 0; i < 30 && balance(high) * start > 0; i++) high += 0.1 * 1.5 ** i;
  if (!(balance(high) * start <= 0)) return undefined;
  for (let i = 0; i < 200 && high - low > 1e-15 * Math.abs(high); i++) {
    const middle = (low + high) / 2;
    if (balance(middle) * start > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** RATE by Newton's method from the guess, then from a smaller one, then by halving what lies above the guess. */
function rateOf(
  periods: number,
  pay: number,
  present: number,
  future: number,
  begin: number,
  guess: number,
): number | CellError {
  if (periods <= 0) return NUM;
  const balance = (r: number): number => {
    if (Math.abs(r) < 1e-12) return present + pay * periods + future;
    const growth = (1 + r) ** periods;
    return present * growth + pay * (1 + r * begin) * ((growth - 1) / r) + future;
  };
  return newton(balance, guess) ?? newton(balance, guess / 10) ?? bisected(balance, guess) ?? NUM;
}

const due = (type: number): number => (type === 0 ? 0 : 1);

/** Interest part of one payment: on what is owed when it is made. A payment due at once carries none. */
function interestPart(
  rate: number,
  period: number,
  periods: number,
  present: number,
  future: number,
  begin: number,
): number | CellError {
  if (period < 1 || period >= periods + 1) return NUM;
  const pay = payment(rate, periods, present, future, begin);
  if (pay instanceof CellError) return pay;
  if (begin === 0) return futureValue(rate, period - 1, pay, present, 0) * rate;
  return period === 1 ? 0 : (futureValue(rate, period - 2, pay, present, 1) - pay) * rate;
}

/** Sum of the interest or principal parts from one period to another. */
function cumulative(
  rate: number,
  periods: number,
  present: number,
  start: number,
  end: number,
  type: number,
  ofInterest: boolean,
): number | CellError {
  const [from, to] = [Math.trunc(start), Math.trunc(end)];
  if (rate <= 0 || periods <= 0 || present <= 0 || from < 1 || to < from || to > periods || (type !== 0 && type !== 1))
    return NUM;
  const pay = payment(rate, periods, present, 0, type);
  if (pay instanceof CellError) return pay;
  let sum = 0;
  withinSteps(to - from);
  for (let period = from; period <= to; period++) {
    const part = interestPart(rate, period, periods, present, 0, type);
    if (part instanceof CellError) return part;
    sum += ofInterest ? part : pay - part;
  }
  return sum;
}

export const annuities: readonly WorksheetFunction[] = [
  define("PMT", "number number number [number] [number]", (rate, periods, present, future = 0, type = 0) =>
    payment(rate, periods, present, future, due(type)),
  ),
  define("FV", "number number number [number] [number]", (rate, periods, pay, present = 0, type = 0) =>
    finite(futureValue(rate, periods, pay, present, due(type)), NUM),
  ),
  define("PV", "number number number [number] [number]", (rate, periods, pay, future = 0, type = 0) =>
    finite(presentValue(rate, periods, pay, future, due(type)), NUM),
  ),
  define("NPER", "number number number [number] [number]", (rate, pay, present, future = 0, type = 0) =>
    periodCount(rate, pay, present, future, due(type)),
  ),
  define(
    "RATE",
    "number number number [number] [number] [number?]",
    (periods, pay, present, future = 0, type = 0, guess = 0.1) =>
      rateOf(periods, pay, present, future, due(type), guess),
  ),
  define(
    "IPMT",
    "number number number number [number] [number]",
    (rate, period, periods, present, future = 0, type = 0) =>
      interestPart(rate, period, periods, present, future, due(type)),
  ),
  define(
    "PPMT",
    "number number number number [number] [number]",
    (rate, period, periods, present, future = 0, type = 0) => {
      const pay = payment(rate, periods, present, future, due(type));
      const part = interestPart(rate, period, periods, present, future, due(type));
      if (pay instanceof CellError) return pay;
      return part instanceof CellError ? part : pay - part;
    },
  ),
  define("CUMIPMT", "number number number number number number", (rate, periods, present, start, end, type) =>
    cumulative(rate, periods, present, start, end, type, true),
  ),
  define("CUMPRINC", "number number number number number number", (rate, periods, present, start, end, type) =>
    cumulative(rate, periods, present, start, end, type, false),
  ),
  define("ISPMT", "number number number number", (rate, period, periods, present) =>
    periods === 0 ? DIV0 : present * rate * (period / periods - 1),
  ),
  define("EFFECT", "number number", (nominal, times) => {
    const n = Math.trunc(times);
    return nominal <= 0 || n < 1 ? NUM : (1 + nominal / n) ** n - 1;
  }),
  define("NOMINAL", "number number", (effective, times) => {
    const n = Math.trunc(times);
    return effective <= 0 || n < 1 ? NUM : n * ((1 + effective) ** (1 / n) - 1);
  }),
  define("RRI", "number number number", (periods, present, future) => {
    if (periods <= 0 || present === 0) return NUM;
    return finite((future / present) ** (1 / periods) - 1, NUM);
  }),
  define("PDURATION", "number number number", (rate, present, future) =>
    rate <= 0 || present <= 0 || future <= 0 ? NUM : (Math.log(future) - Math.log(present)) / Math.log1p(rate),
  ),
];
