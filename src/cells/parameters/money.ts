/** Amounts of the shop's money, and profit as a share. */
import type { ProfitBasis } from "../../calc/cost/price-for-margin.ts";
import { type Money, money } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record.ts";
import { number } from "./number.ts";

const MOST = 1e12; // beyond it cents are no longer exact in a cell

export const moneyAmount = (description: string): CellParameter<Money> => {
  const base = number({ description, rule: { from: 0, to: MOST }, noun: "amount" });
  return { ...base, type: "money", read: (given, name, context) => money(base.read(given, name, context)) };
};

const LARGEST_SHARE = 10;
export const profitShare = (): CellParameter<number> =>
  number({
    description: "Profit as a share: 0.3 or 30%",
    rule: { from: 0, to: LARGEST_SHARE },
    noun: "share",
    hint: "write 30 percent as 0.3 or 30%",
  });

/** A margin of the whole price leaves nothing for the cost. */
export function belowOne(share: number, basis: ProfitBasis): number {
  if (basis === "margin" && share >= 1)
    throw wrong("margin", "a share of less than 1 of the price", share, 'write 30 percent as 0.3; or basis "markup"');
  return share;
}
