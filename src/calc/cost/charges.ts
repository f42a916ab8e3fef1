import { type Money, money, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { toCent, upToCent } from "./cent.ts";

/** What the shop asks of an order beside its lines. */
export interface OrderTerms {
  readonly minimum: Money;
  readonly rush: Ratio;
  readonly crate: Money;
  readonly truck: Money;
  readonly tax: Ratio;
}

export interface Charges {
  /** What is missing to the least order the shop takes; 0 above it. */
  readonly minimum: Money;
  readonly rush: Money;
  readonly crate: Money;
  readonly truck: Money;
  readonly tax: Money;
  readonly total: Money;
}

/**
 * Lines of their own, so that the unit prices stay what they are: first up to the minimum, then the rush on all of it,
 * then crate and truck, and tax on everything. Each is whole cents: the total is the sum of what is printed. A bill of
 * which nothing is quoted costs nothing.
 */
export function charges(lines: readonly Money[], terms: OrderTerms, work?: Working): Charges {
  const sum = step(work, "sum", "sum of the lines", toCent(lines.reduce((a, b) => a + b, 0)), "money", "sum");
  const isEmpty = lines.length === 0;
  const minimum = isEmpty ? money(0) : toCent(Math.max(0, terms.minimum - sum));
  step(work, "minimum", "up to the minimum charge", minimum, "money", "the workbook's minimum");
  const share = "the workbook's share";
  const rush = step(work, "rush", "rush on all of it", upToCent(terms.rush * (sum + minimum)), "money", share);
  const [crate, truck] = isEmpty ? [0, 0] : [upToCent(terms.crate), upToCent(terms.truck)];
  const before = toCent(sum + minimum + rush + crate + truck);
  const tax = step(work, "tax", "tax on all of it", toCent(terms.tax * before), "money", share);
  const total = step(work, "total", "total", toCent(before + tax), "money", "sum");
  return { minimum, rush, crate: money(crate), truck: money(truck), tax, total };
}
