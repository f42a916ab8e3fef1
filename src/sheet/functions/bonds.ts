import { CellError } from "../../units/cell.ts";
import { withinSteps } from "../evaluate/array-limit.ts";
import { type CalendarDay, dayOf, monthLength, serialOf } from "../evaluate/calendar.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NUM } from "../evaluate/value.ts";
import { actualDays, days30Us, days360, yearFraction } from "./day-count.ts";
import { define, fail } from "./define.ts";

interface Coupons {
  readonly before: CalendarDay;
  readonly next: CalendarDay;
  /** Coupons still to come. */
  readonly count: number;
  readonly settlement: CalendarDay;
  readonly frequency: number;
  readonly basis: number;
}

const serial = (d: CalendarDay): number => serialOf(d.year, d.month, d.day) ?? fail(NUM);

/** The day so many months before maturity; a bond that ends with a month pays at month ends. */
function monthsBefore(maturity: CalendarDay, months: number): CalendarDay {
  const index = maturity.year * 12 + maturity.month - 1 - months;
  const [year, month] = [Math.floor(index / 12), (index % 12) + 1];
  const last = monthLength(year, month);
  const atEnd = maturity.day === monthLength(maturity.year, maturity.month);
  return { year, month, day: atEnd ? last : Math.min(maturity.day, last) };
}

function coupons(settlement: number, maturity: number, frequency: number, basis: number): Coupons {
  const [f, b] = [Math.trunc(frequency), Math.trunc(basis)];
  const from = dayOf(settlement) ?? fail(NUM);
  const to = dayOf(maturity) ?? fail(NUM);
  if (Math.floor(settlement) >= Math.floor(maturity) || ![1, 2, 4].includes(f) || b < 0 || b > 4) fail(NUM);
  const step = 12 / f;
  let count = Math.max(0, Math.floor(((to.year - from.year) * 12 + to.month - from.month) / step) - 1);
  while (serial(monthsBefore(to, (count + 1) * step)) > Math.floor(settlement)) count++;
  return {
    before: monthsBefore(to, (count + 1) * step),
    next: monthsBefore(to, count * step),
    count: count + 1,
    settlement: from,
    frequency: f,
    basis: b,
  };
}

/** Days between two days by the bond basis. */
const daysBy = (basis: number, a: CalendarDay, b: CalendarDay): number =>
  basis === 0 ? days30Us(a, b) : basis === 4 ? days360(a, b, true) : actualDays(a, b);

const periodDays = ({ before, next, frequency, basis }: Coupons): number =>
  basis === 1 ? actualDays(before, next) : (basis === 3 ? 365 : 360) / frequency;

const daysBefore = (c: Coupons): number => daysBy(c.basis, c.before, c.settlement);
const daysToNext = (c: Coupons): number =>
  c.basis === 0 || c.basis === 4 ? periodDays(c) - daysBefore(c) : actualDays(c.settlement, c.next);

/** Price per 100 face value, without the interest accrued (Microsoft's description of PRICE). */
function price(c: Coupons, rate: number, yieldRate: number, redemption: number): number {
  const { count, frequency: f } = c;
  const part = daysToNext(c) / periodDays(c);
  const coupon = (100 * rate) / f;
  const accrued = (coupon * daysBefore(c)) / periodDays(c);
  if (count === 1) return (redemption + coupon) / (1 + (part * yieldRate) / f) - accrued;
  const growth = 1 + yieldRate / f;
  let sum = redemption / growth ** (count - 1 + part);
  for (let k = 0; k < count; k++) sum += coupon / growth ** (k + part);
  return sum - accrued;
}

function yieldOf(c: Coupons, rate: number, paid: number, redemption: number): number | CellError {
  let [low, high] = [-0.999999 * c.frequency, 1];
  if (c.count === 1) low = (-0.999999 * c.frequency * periodDays(c)) / Math.max(daysToNext(c), 1e-9);
  while (price(c, rate, high, redemption) > paid && high < 1e6) high *= 2;
  for (let i = 0; i < 300 && high - low > Math.abs(high) * 2 ** -52; i++) {
    const middle = (low + high) / 2;
    if (price(c, rate, middle, redemption) > paid) low = middle;
    else high = middle;
  }
  return high >= 1e6 ? NUM : (low + high) / 2;
}

/** Macaulay duration in years. */
function duration(c: Coupons, rate: number, yieldRate: number): number {
  const { count, frequency: f } = c;
  const part = daysToNext(c) / periodDays(c);
  const growth = 1 + yieldRate / f;
  let [weighted, total] = [0, 0];
  for (let k = 0; k < count; k++) {
    const worth = ((100 * rate) / f + (k === count - 1 ? 100 : 0)) / growth ** (k + part);
    weighted += worth * (k + part);
    total += worth;
  }
  return weighted / total / f;
}

const fraction = (from: number, to: number, basis: number): number => {
  const part = yearFraction(from, to, Math.trunc(basis), false);
  return part instanceof CellError ? fail(part) : part;
};

const ofCoupons = (name: string, compute: (c: Coupons) => number): WorksheetFunction =>
  define(name, "nnn?n", (settlement, maturity, frequency, basis = 0) =>
    compute(coupons(settlement, maturity, frequency, basis)),
  );

const refuse = (bad: boolean): void => {
  if (bad) fail(NUM);
};

/** AMORDEGRC's factor on the rate by the life it means, in years (Microsoft's description of AMORDEGRC, memory). */
const degressive = (life: number): number => (life < 3 ? 1 : life < 5 ? 1.5 : life <= 6 ? 2 : 2.5);

/** The French degressive depreciation of a period, in whole units of money. */
function degressiveDepreciation(first: number, cost: number, salvage: number, period: number, rate: number): number {
  const factored = rate * degressive(1 / rate);
  let amount = Math.round(first * factored * cost);
  let value = cost - amount;
  let left = value - salvage;
  for (let n = 0; n < period; n++) {
    amount = Math.round(factored * value);
    left -= amount;
    if (left < 0) return period - n <= 1 ? Math.round(value / 2) : 0;
    value -= amount;
  }
  return amount;
}

export const bonds: readonly WorksheetFunction[] = [
  ofCoupons("COUPPCD", (c) => serial(c.before)),
  ofCoupons("COUPNCD", (c) => serial(c.next)),
  ofCoupons("COUPNUM", (c) => c.count),
  ofCoupons("COUPDAYBS", daysBefore),
  ofCoupons("COUPDAYS", periodDays),
  ofCoupons("COUPDAYSNC", daysToNext),
  define("PRICE", "nnnnnn?n", (settlement, maturity, rate, yieldRate, redemption, frequency, basis = 0) => {
    refuse(rate < 0 || yieldRate < 0 || redemption <= 0);
    return price(coupons(settlement, maturity, frequency, basis), rate, yieldRate, redemption);
  }),
  define("YIELD", "nnnnnn?n", (settlement, maturity, rate, paid, redemption, frequency, basis = 0) => {
    refuse(rate < 0 || paid <= 0 || redemption <= 0);
    return yieldOf(coupons(settlement, maturity, frequency, basis), rate, paid, redemption);
  }),
  define("DURATION", "nnnnn?n", (settlement, maturity, rate, yieldRate, frequency, basis = 0) => {
    refuse(rate < 0 || yieldRate < 0);
    return duration(coupons(settlement, maturity, frequency, basis), rate, yieldRate);
  }),
  define("MDURATION", "nnnnn?n", (settlement, maturity, rate, yieldRate, frequency, basis = 0) => {
    refuse(rate < 0 || yieldRate < 0);
    const c = coupons(settlement, maturity, frequency, basis);
    return duration(c, rate, yieldRate) / (1 + yieldRate / c.frequency);
  }),
  define("PRICEMAT", "nnnnn?n", (settlement, maturity, issue, rate, yieldRate, basis = 0) => {
    refuse(rate < 0 || yieldRate < 0 || settlement >= maturity);
    const [whole, left, gone] = [
      fraction(issue, maturity, basis),
      fraction(settlement, maturity, basis),
      fraction(issue, settlement, basis),
    ];
    return (100 + whole * rate * 100) / (1 + left * yieldRate) - gone * rate * 100;
  }),
  define("YIELDMAT", "nnnnn?n", (settlement, maturity, issue, rate, paid, basis = 0) => {
    refuse(rate < 0 || paid <= 0 || settlement >= maturity);
    const [whole, left, gone] = [
      fraction(issue, maturity, basis),
      fraction(settlement, maturity, basis),
      fraction(issue, settlement, basis),
    ];
    return ((1 + whole * rate) / (paid / 100 + gone * rate) - 1) / left;
  }),
  define("ACCRINT", "nnnnnn?nb", (issue, first, settlement, rate, par, frequency, basis = 0, fromIssue = true) => {
    refuse(
      rate <= 0 ||
        par <= 0 ||
        Math.floor(issue) >= Math.floor(settlement) ||
        ![1, 2, 4].includes(Math.trunc(frequency)),
    );
    const start = !fromIssue && settlement > first ? first : issue;
    return par * rate * fraction(start, settlement, basis);
  }),
  define("AMORLINC", "nnnnnn?n", (cost, bought, firstEnd, salvage, period, rate, basis = 0) => {
    refuse(cost <= 0 || salvage > cost || period < 0 || rate <= 0);
    const yearly = cost * rate;
    const first = yearly * fraction(bought, firstEnd, basis);
    const full = Math.trunc((cost - salvage - first) / yearly);
    const n = Math.trunc(period);
    return n === 0 ? first : n <= full ? yearly : n === full + 1 ? cost - salvage - yearly * full - first : 0;
  }),
  define("AMORDEGRC", "nnnnnn?n", (cost, bought, firstEnd, salvage, period, rate, basis = 0) => {
    refuse(cost <= 0 || salvage > cost || period < 0 || rate <= 0);
    withinSteps(period);
    return degressiveDepreciation(fraction(bought, firstEnd, basis), cost, salvage, Math.trunc(period), rate);
  }),
];
