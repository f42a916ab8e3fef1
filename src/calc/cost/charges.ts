import { type Money, money, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { toCent, upToCent } from "./cent.ts";

export interface Charges {
  /** What is missing to the least order the shop takes; 0 above it. */
  readonly minimum: Money;
  readonly rush: Money;
  readonly total: Money;
}

/** Lines of their own, so that the unit prices stay what they are: first up to the minimum, then the rush on all of it. */
export function charges(lines: readonly Money[], minimumCharge: Money, rushShare: Ratio, work?: Working): Charges {
  const sum = step(work, "sum", "sum of the lines", toCent(lines.reduce((a, b) => a + b, 0)), "money", "sum");
  const minimum = toCent(Math.max(0, minimumCharge - sum));
  step(work, "minimum", "up to the minimum charge", minimum, "money", "the workbook's minimum");
  const rush = step(
    work,
    "rush",
    "rush on all of it",
    upToCent(rushShare * (sum + minimum)),
    "money",
    "the workbook's share",
  );
  const total = step(work, "total", "total", toCent(sum + minimum + rush), "money", "sum");
  return { minimum, rush: money(rush), total };
}
