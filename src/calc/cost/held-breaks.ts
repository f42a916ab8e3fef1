import { itemAt } from "../../units/certain.ts";
import { type Money, money } from "../../units/quantity.ts";

const CENTS = 100; // by definition, hundredths

/**
 * Prices by quantity as a customer may read them: from the quantity that is asked for outwards, a larger one is never
 * dearer each and never less in all than the one before it. What the reckoning says otherwise (a minimum that ends, a sheet
 * plan that happens to be better, the last cent) is held at the nearest price that keeps both, in whole cents.
 * @param breaks smallest first, no quantity twice; unit prices in whole cents.
 * @param from index of the one that stays as it is.
 */
export function heldBreaks(
  breaks: readonly { readonly quantity: number; readonly unitPrice: Money }[],
  from: number,
): Money[] {
  const held = breaks.map(({ quantity, unitPrice }) => ({ quantity, cents: Math.round(unitPrice * CENTS) }));
  const perPiece = (all: (typeof held)[number], { quantity }: { readonly quantity: number }) =>
    (all.quantity * all.cents) / quantity;
  for (let i = from + 1; i < held.length; i++) {
    const [before, here] = [itemAt(held, i - 1), itemAt(held, i)];
    here.cents = Math.min(before.cents, Math.max(here.cents, Math.ceil(perPiece(before, here))));
  }
  for (let i = from - 1; i >= 0; i--) {
    const [here, after] = [itemAt(held, i), itemAt(held, i + 1)];
    here.cents = Math.max(after.cents, Math.min(here.cents, Math.floor(perPiece(after, here))));
  }
  return held.map(({ cents }) => money(cents / CENTS));
}
