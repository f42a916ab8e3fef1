/** Amounts of the shop's money, and profit as a share. */
import type { ProfitBasis } from "../../calc/cost/price-for-margin.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { type Money, money } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";
import { number } from "./number.ts";

const MOST = 1e12; // beyond it cents are no longer exact in a cell

export const moneyAmount = (description: string): CellParameter<Money> => {
  const base = number({ description, rule: { from: 0, to: MOST }, noun: "amount" });
  return { ...base, type: "money", read: (given, name, context) => money(base.read(given, name, context)) };
};

const LARGEST_SHARE = 10;
const PERCENT = /\s*%$/;

/** 0.3, or text such as "30%"; a cell formatted as a percentage holds the share already. */
export const profitShare = (): CellParameter<number> => {
  const base = number({
    description: "Profit as a share: 0.3 or 30%",
    rule: { from: 0, to: LARGEST_SHARE },
    noun: "share",
    hint: "write 30 percent as 0.3 or 30%",
  });
  return {
    ...base,
    read: (given, name, context) => {
      const percent =
        typeof given === "string" && PERCENT.test(given) ? parseNumber(given.replace(PERCENT, "")) : given;
      return typeof percent === "number" && percent !== given
        ? base.read(percent / 100, name, context)
        : base.read(given, name, context);
    },
  };
};

/** A margin of the whole price leaves nothing for the cost. */
export function belowOne(share: number, basis: ProfitBasis): number {
  if (basis === "margin" && share >= 1)
    throw wrong("margin", "a share of less than 1 of the price", share, 'write 30 percent as 0.3; or basis "markup"');
  return share;
}
