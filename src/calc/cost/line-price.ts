import { type Money, money, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { toCent, upToCent } from "./cent.ts";
import { type ProfitBasis, priceForMargin } from "./price-for-margin.ts";

/** What one line costs, in parts. */
interface LineCost {
  readonly material: Money;
  readonly labor: Money;
  readonly setUp: Money;
  readonly outside: Money;
  /** Certificate, first article, engineering, hardware. */
  readonly extras: Money;
}

/** What the shop asks of every line. */
export interface Asked {
  /** Share of labor and set-up. */
  readonly overhead: Ratio;
  readonly profit: { readonly share: Ratio; readonly basis: ProfitBasis };
  /** The least price of a line. */
  readonly minimum: Money;
}

export interface LinePrice extends LineCost {
  readonly overhead: Money;
  readonly cost: Money;
  readonly unitPrice: Money;
  readonly price: Money;
}

/**
 * The price of a line: overhead on the shop's own labor and set-up, the set-up spread over the quantity, at least the
 * line minimum, the unit price rounded up to the cent, the line unit x quantity, so that a customer who multiplies finds
 * the same (shop practice).
 */
export function linePrice(
  quantity: number,
  cost: LineCost,
  { overhead: overheadShare, profit, minimum }: Asked,
  work?: Working,
): LinePrice {
  step(work, "labor", "labor at the stations' rates", cost.labor, "money", "time x rate");
  step(work, "set-up", "set-up at the stations' rates", cost.setUp, "money", "time x rate");
  step(work, "outside", "work and finish of vendors", cost.outside, "money", "the workbook's prices");
  step(
    work,
    "extras",
    "certificate, first article, engineering, hardware",
    cost.extras,
    "money",
    "the workbook's prices",
  );
  const overhead = step(
    work,
    "overhead",
    "overhead on labor and set-up",
    money(overheadShare * (cost.labor + cost.setUp)),
    "money",
    "the workbook's share",
  );
  const total = money(cost.material + cost.labor + cost.setUp + cost.outside + cost.extras + overhead);
  step(work, "cost", "cost of the line", total, "money", "sum");
  const own = priceForMargin(money(total / quantity), profit.share, profit.basis, work);
  const least = upToCent(minimum / quantity);
  if (least > own) step(work, "least", "each, up to the line minimum", least, "money", "the workbook's minimum");
  const unitPrice = money(Math.max(own, least));
  const price = step(work, "line", "price of the line", toCent(unitPrice * quantity), "money", "unit price x quantity");
  return { ...cost, overhead, cost: total, unitPrice, price };
}
