import type { Money, Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { upToCent } from "./cent.ts";

/** "margin": profit as a share of the price; "markup": as a share of the cost. */
export const PROFIT_BASES = ["margin", "markup"] as const;
export type ProfitBasis = (typeof PROFIT_BASES)[number];

/**
 * What to ask so that this share is left: cost / (1 - margin), rounded up to the cent; or cost x (1 + mark-up). 0.3 of
 * the cost is only 0.23 of the price: the two are not the same. By definition of margin and mark-up.
 */
export function priceForMargin(cost: Money, share: Ratio, basis: ProfitBasis, work?: Working): Money {
  const exact = step(
    work,
    "P",
    basis === "margin" ? "price that leaves the margin" : "cost and mark-up",
    basis === "margin" ? cost / (1 - share) : cost * (1 + share),
    "money",
    basis === "margin" ? "cost / (1 - margin), by definition" : "cost (1 + mark-up), by definition",
  );
  return step(work, "price", "rounded up to the cent", upToCent(exact), "money", "shop practice");
}
