import { type Money, money, type Ratio } from "../../units/quantity.ts";
import type { Working } from "../../units/working.ts";
import { toCent } from "./cent.ts";
import { type ProfitBasis, priceForMargin } from "./price-for-margin.ts";

export interface PriceBreak {
  readonly quantity: number;
  readonly unitCost: Money;
  readonly unitPrice: Money;
  readonly price: Money;
}

/** Unit price by quantity: the set-up spread over the pieces, the rest each (derived). Prices in whole cents. */
export function priceBreaks(
  quantities: readonly number[],
  setUpCost: Money,
  costEach: Money,
  share: Ratio,
  basis: ProfitBasis,
  work?: Working,
): PriceBreak[] {
  return quantities.map((quantity) => {
    const unitCost = money(setUpCost / quantity + costEach);
    const unitPrice = priceForMargin(unitCost, share, basis, work);
    return { quantity, unitCost, unitPrice, price: toCent(unitPrice * quantity) };
  });
}
