import type { CellError } from "../../units/cell.ts";
import { withinSteps } from "../evaluate/array-limit.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { define } from "./define.ts";

/** Fixed declining balance: the yearly rate is rounded to three places, the first year may have fewer months. */
function declining(cost: number, salvage: number, life: number, period: number, months: number): number | CellError {
  const first = Math.trunc(months);
  if (
    cost < 0 ||
    salvage < 0 ||
    life <= 0 ||
    period < 1 ||
    first < 1 ||
    first > 12 ||
    period > life + (first < 12 ? 1 : 0)
  )
    return NUM;
  if (cost === 0) return 0;
  const rate = Math.round((1 - (salvage / cost) ** (1 / life)) * 1000) / 1000;
  let total = (cost * rate * first) / 12;
  if (Math.trunc(period) === 1) return total;
  withinSteps(period);
  for (let year = 2; year < Math.trunc(period); year++) total += (cost - total) * rate;
  return period > life ? ((cost - total) * rate * (12 - first)) / 12 : (cost - total) * rate;
}

/** Double (or other) declining balance in one period. */
function doubleDeclining(
  cost: number,
  salvage: number,
  life: number,
  period: number,
  factor: number,
): number | CellError {
  if (cost < 0 || salvage < 0 || life <= 0 || period <= 0 || period > life || factor <= 0) return NUM;
  const rate = Math.min(1, factor / life);
  const before = rate === 1 ? (period === 1 ? cost : 0) : cost * (1 - rate) ** (period - 1);
  const after = cost * (1 - rate) ** period;
  return Math.max(0, after < salvage ? before - salvage : before - after);
}

/**
 * Declining balance over a span that may begin and end within periods; changes to straight line when that is more,
 * unless told not to.
 */
function variable(
  cost: number,
  salvage: number,
  life: number,
  start: number,
  end: number,
  factor: number,
  noSwitch: boolean,
): number | CellError {
  if (cost < 0 || salvage < 0 || life <= 0 || start < 0 || end < start || end > life || factor <= 0) return NUM;
  const first = Math.floor(start);
  let total = 0;
  let value = cost;
  withinSteps(end);
  for (let year = 0; year < Math.ceil(end); year++) {
    const byRate = Math.min(Math.max(0, value - salvage), (value * factor) / life);
    const straight = (value - salvage) / Math.max(life - year, 1e-300);
    const amount = Math.max(0, noSwitch ? byRate : Math.max(byRate, Math.min(straight, value - salvage)));
    const from = Math.max(start, year);
    const to = Math.min(end, year + 1);
    if (year >= first && to > from) total += amount * (to - from);
    value -= amount;
  }
  return total;
}

export const depreciation: readonly WorksheetFunction[] = [
  define("SLN", "number number number", (cost, salvage, life) => (life === 0 ? DIV0 : (cost - salvage) / life)),
  define("SYD", "number number number number", (cost, salvage, life, period) =>
    life <= 0 || period < 1 || period > life ? NUM : ((cost - salvage) * (life - period + 1) * 2) / (life * (life + 1)),
  ),
  define("DB", "number number number number [number?]", (cost, salvage, life, period, months = 12) =>
    declining(cost, salvage, life, period, months),
  ),
  define("DDB", "number number number number [number?]", (cost, salvage, life, period, factor = 2) =>
    doubleDeclining(cost, salvage, life, period, factor),
  ),
  define(
    "VDB",
    "number number number number number [number?] [boolean?]",
    (cost, salvage, life, start, end, factor = 2, noSwitch = false) =>
      variable(cost, salvage, life, start, end, factor, noSwitch),
  ),
];
