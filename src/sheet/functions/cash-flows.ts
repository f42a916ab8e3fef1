import { CellError } from "../../units/cell.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";
import { numbersOf } from "./numbers.ts";

/** Value now of payments at times (in periods) at a rate. */
const presentValue = (rate: number, amounts: readonly number[], times: readonly number[]): number =>
  amounts.reduce((sum, amount, i) => sum + amount / (1 + rate) ** itemAt(times, i), 0);

/**
 * The rate at which payments are worth nothing now: Newton's method from the guess; where it does not settle, the sign
 * change nearest to the guess is closed in by bisection.
 */
function internalRate(amounts: readonly number[], times: readonly number[], guess: number): number | CellError {
  if (!amounts.some((a) => a > 0) || !amounts.some((a) => a < 0)) return NUM;
  const worth = (r: number): number => presentValue(r, amounts, times);
  const slope = (r: number): number =>
    amounts.reduce((sum, a, i) => sum - (itemAt(times, i) * a) / (1 + r) ** (itemAt(times, i) + 1), 0);
  let r = guess;
  for (let i = 0; i < 60 && r > -1; i++) {
    const next = r - worth(r) / slope(r);
    if (!Number.isFinite(next)) break;
    if (Math.abs(next - r) <= 1e-13 * Math.max(1, Math.abs(next)) && next > -1) return next;
    r = next;
  }
  let low = -0.999999;
  for (let step = 0; step < 400; step++) {
    const high = -1 + (low + 1) * 1.1 + 0.001;
    if (worth(low) * worth(high) <= 0) return bisect(worth, low, high);
    low = high;
  }
  return NUM;
}

function bisect(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const rising = f(low) < 0;
  for (let i = 0; i < 200 && high - low > Math.abs(low) * 2 ** -52; i++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const all = (frame: Frame, value: Value): number[] =>
  toMatrix(value, frame)
    .flat()
    .map((v) => (typeof v === "number" ? v : fail(v instanceof CellError ? v : VALUE)));

/** Amounts with their dates as years from the first one (365 days each). */
function dated(frame: Frame, values: Value, dates: Value): { amounts: number[]; years: number[] } {
  const amounts = all(frame, values);
  const days = all(frame, dates).map(Math.floor);
  if (amounts.length !== days.length || days.some((d) => d < firstOf(days))) fail(NUM);
  return { amounts, years: days.map((d) => (d - firstOf(days)) / 365) };
}

export const cashFlows: readonly WorksheetFunction[] = [
  defineIn("NPV", "number range...", (frame, ...given) => {
    const [rate, ...args] = given as unknown as [number, ...Value[]];
    const amounts = numbersOf(frame, args);
    return rate === -1
      ? DIV0
      : presentValue(
          rate,
          amounts,
          amounts.map((_, i) => i + 1),
        );
  }),
  defineIn("IRR", "array [number?]", (frame, values, guess = 0.1) => {
    const amounts = numbersOf(frame, [values]);
    return internalRate(
      amounts,
      amounts.map((_, i) => i),
      guess,
    );
  }),
  defineIn("MIRR", "array number number", (frame, values, finance, reinvest) => {
    const amounts = numbersOf(frame, [values]);
    const n = amounts.length;
    const at = amounts.map((_, i) => i);
    const gains = presentValue(
      reinvest,
      amounts.map((a) => Math.max(a, 0)),
      at,
    );
    const costs = presentValue(
      finance,
      amounts.map((a) => Math.min(a, 0)),
      at,
    );
    return gains === 0 || costs === 0 || n < 2
      ? DIV0
      : ((-gains * (1 + reinvest) ** (n - 1)) / costs) ** (1 / (n - 1)) - 1;
  }),
  defineIn("XNPV", "number array array", (frame, rate, values, dates) => {
    const { amounts, years } = dated(frame, values, dates);
    return rate <= -1 ? NUM : presentValue(rate, amounts, years);
  }),
  defineIn("XIRR", "array array [number?]", (frame, values, dates, guess = 0.1) => {
    const { amounts, years } = dated(frame, values, dates);
    return internalRate(amounts, years, guess);
  }),
  defineIn("FVSCHEDULE", "number array", (frame, principal, schedule) =>
    toMatrix(schedule, frame)
      .flat()
      .reduce<number>((value, rate) => {
        if (rate instanceof CellError) fail(rate);
        return rate === null ? value : typeof rate === "number" ? value * (1 + rate) : fail(VALUE);
      }, principal),
  ),
];
