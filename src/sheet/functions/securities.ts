import { CellError } from "../../units/cell.ts";
import { dayOf, serialOf } from "../evaluate/calendar.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { yearFraction } from "./day-count.ts";
import { define, fail } from "./define.ts";

/** Part of a year between settlement and maturity by the bond basis; the days must be in order. */
function years(settlement: number, maturity: number, basis: number): number {
  if (Math.floor(settlement) >= Math.floor(maturity)) fail(NUM);
  const fraction = yearFraction(settlement, maturity, Math.trunc(basis), false);
  return fraction instanceof CellError ? fail(fraction) : fraction;
}

/** Days of a treasury bill, at most one year ahead. */
function billDays(settlement: number, maturity: number): number {
  const days = Math.floor(maturity) - Math.floor(settlement);
  const day = dayOf(settlement) ?? fail(NUM);
  const limit = serialOf(day.year + 1, day.month, day.day) ?? fail(NUM);
  return days <= 0 || Math.floor(maturity) > limit ? fail(NUM) : days;
}

/** A price in whole and fraction of so many parts: 1.02 in sixteenths is 1 and 2/16. */
function dollar(price: number, parts: number, toDecimal: boolean): number | CellError {
  const n = Math.trunc(parts);
  if (n < 0) return NUM;
  if (n < 1) return DIV0;
  const whole = Math.trunc(price);
  const scale = 10 ** Math.ceil(Math.log10(n) + 1e-12);
  const rest = price - whole;
  return toDecimal ? whole + (rest * scale) / n : whole + (rest * n) / scale;
}

const positive = (...values: number[]): void => {
  if (values.some((v) => v <= 0)) fail(NUM);
};

export const securities: readonly WorksheetFunction[] = [
  define("DISC", "nnnn?n", (settlement, maturity, price, redemption, basis = 0) => {
    positive(price, redemption);
    return (redemption - price) / redemption / years(settlement, maturity, basis);
  }),
  define("INTRATE", "nnnn?n", (settlement, maturity, investment, redemption, basis = 0) => {
    positive(investment, redemption);
    return (redemption - investment) / investment / years(settlement, maturity, basis);
  }),
  define("RECEIVED", "nnnn?n", (settlement, maturity, investment, discount, basis = 0) => {
    positive(investment, discount);
    const left = 1 - discount * years(settlement, maturity, basis);
    return left <= 0 ? NUM : investment / left;
  }),
  define("PRICEDISC", "nnnn?n", (settlement, maturity, discount, redemption, basis = 0) => {
    positive(discount, redemption);
    return redemption - discount * redemption * years(settlement, maturity, basis);
  }),
  define("YIELDDISC", "nnnn?n", (settlement, maturity, price, redemption, basis = 0) => {
    positive(price, redemption);
    return (redemption / price - 1) / years(settlement, maturity, basis);
  }),
  define("ACCRINTM", "nnn?Nn", (issue, settlement, rate, par = 1000, basis = 0) => {
    positive(rate, par);
    return par * rate * years(issue, settlement, basis);
  }),
  define("TBILLPRICE", "nnn", (settlement, maturity, discount) => {
    positive(discount);
    const price = 100 * (1 - (discount * billDays(settlement, maturity)) / 360);
    return price < 0 ? NUM : price;
  }),
  define("TBILLYIELD", "nnn", (settlement, maturity, price) => {
    positive(price);
    return ((100 - price) / price) * (360 / billDays(settlement, maturity));
  }),
  define("TBILLEQ", "nnn", (settlement, maturity, discount) => {
    positive(discount);
    const days = billDays(settlement, maturity);
    if (days <= 182) return (365 * discount) / (360 - discount * days);
    // Beyond half a year the bond-equivalent yield compounds once (US Treasury's formula, memory).
    const price = (100 - (discount * 100 * days) / 360) / 100;
    const span = days === 366 ? 366 : 365;
    const part = days / span;
    return (-2 * part + 2 * Math.sqrt(part ** 2 - (2 * part - 1) * (1 - 1 / price))) / (2 * part - 1);
  }),
  define("DOLLARDE", "nn", (price, parts) => dollar(price, parts, true)),
  define("DOLLARFR", "nn", (price, parts) => dollar(price, parts, false)),
];
