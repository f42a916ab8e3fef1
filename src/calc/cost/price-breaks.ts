import { entryOf, itemAt } from "../../units/certain.ts";
import { type Money, money, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { toCent } from "./cent.ts";
import { heldBreaks } from "./held-breaks.ts";
import { type ProfitBasis, priceForMargin } from "./price-for-margin.ts";

interface PriceBreak {
  readonly quantity: number;
  readonly unitCost: Money;
  readonly unitPrice: Money;
  readonly price: Money;
}

/** Unit price by quantity: the set-up spread over the pieces, the rest each (derived). Prices in whole cents, held. */
export function priceBreaks(
  quantities: readonly number[],
  cost: { readonly setUp: Money; readonly each: Money },
  profit: { readonly share: Ratio; readonly basis: ProfitBasis },
  work?: Working,
): PriceBreak[] {
  const found = [...new Set(quantities)].map((quantity) => {
    const unitCost = money(cost.setUp / quantity + cost.each);
    return { quantity, unitCost, unitPrice: priceForMargin(unitCost, profit.share, profit.basis, work) };
  });
  const inOrder = [...found].sort((a, b) => a.quantity - b.quantity);
  const held = heldBreaks(inOrder, 0);
  const priced = new Map(inOrder.map((own, i) => [own.quantity, { own, unitPrice: itemAt(held, i) }]));
  return quantities.map((quantity) => {
    const { own, unitPrice } = entryOf(priced, quantity);
    const { unitCost } = own;
    if (unitPrice !== own.unitPrice)
      step(work, "held", `each of ${quantity}, not less in all than fewer`, unitPrice, "money", "whole cents");
    return { quantity, unitCost, unitPrice, price: toCent(unitPrice * quantity) };
  });
}
