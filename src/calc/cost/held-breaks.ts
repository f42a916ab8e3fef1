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
  const cents = breaks.map(({ unitPrice }) => Math.round(unitPrice * CENTS));
  const all = (i: number): number => breaks[i]!.quantity * cents[i]!;
  for (let i = from + 1; i < cents.length; i++)
    cents[i] = Math.min(cents[i - 1]!, Math.max(cents[i]!, Math.ceil(all(i - 1) / breaks[i]!.quantity)));
  for (let i = from - 1; i >= 0; i--)
    cents[i] = Math.max(cents[i + 1]!, Math.min(cents[i]!, Math.floor(all(i + 1) / breaks[i]!.quantity)));
  return cents.map((each) => money(each / CENTS));
}
