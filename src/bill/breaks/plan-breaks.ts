/** What one line costs by quantity while the others stay the same. */
import { toCent, upToCent } from "../../calc/cost/cent.ts";
import { charges } from "../../calc/cost/charges.ts";
import { heldBreaks } from "../../calc/cost/held-breaks.ts";
import { itemAt } from "../../units/certain.ts";
import type { Money } from "../../units/quantity.ts";
import { noAnswer, Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { lineName } from "../line-name.ts";
import { orderTerms } from "../money/plan-money.ts";
import type { BillLine } from "../nouns/line.ts";
import type { BillPlan, QuotedLine } from "../plan.ts";

interface LineBreak {
  readonly quantity: number;
  readonly unitPrice: Money;
  readonly price: Money;
  /** The whole order with it. */
  readonly order: Money;
  /** The quantity of the bill: the price is the one that stands there. */
  readonly isInBill: boolean;
  /** The calculation gives another price: more each than for fewer pieces, or less in all. */
  readonly isHeld: boolean;
}

/**
 * The bill is planned anew with each quantity. What the order then costs more or less goes to this line, since the others
 * are printed as they are; then `heldBreaks`, from the quantity of the bill on. Smallest first, each quantity once, the
 * bill's own among them; a Refusal where the same lines are not quoted with it. Throws the Refusal of what a price lacks.
 */
export function planBreaks(
  plan: BillPlan,
  line: QuotedLine,
  quantities: readonly number[],
): (readonly [quantity: number, found: LineBreak | Refusal])[] {
  const own = line.plan.line.quantity;
  const { unitPrice: printed, price } = plan.priceOf(line);
  const prices = pricesOf(plan);
  const others = toCent(sum(prices) - price);
  const found = [...new Set([...quantities, own])]
    .sort((a, b) => a - b)
    .map((quantity) => {
      if (quantity === own) return { quantity, unitPrice: printed };
      const total = refusalOr(() => totalWith(plan, line, quantity, prices));
      return total instanceof Refusal
        ? { quantity, none: total }
        : { quantity, unitPrice: upToCent((total - others) / quantity) };
    });
  const asked = found.flatMap((each) => (each.none ? [] : [each]));
  const held = heldBreaks(
    asked,
    asked.findIndex(({ quantity }) => quantity === own),
  );
  return found.map((each) => {
    if (each.none) return [each.quantity, each.none];
    const unitPrice = itemAt(held, asked.indexOf(each));
    const all = toCent(unitPrice * each.quantity);
    const order = charges([others, all], orderTerms(plan.shop)).total;
    const isHeld = unitPrice !== each.unitPrice;
    return [
      each.quantity,
      { quantity: each.quantity, unitPrice, price: all, order, isInBill: each.quantity === own, isHeld },
    ];
  });
}

type Prices = ReadonlyMap<number, Money>;
const sum = (prices: Prices): number => [...prices.values()].reduce((total, price) => total + price, 0);

/** Prices of the lines that have one, by row. */
const pricesOf = (plan: BillPlan): Prices =>
  new Map(
    plan.quoted.flatMap((line) => {
      const price = refusalOr(() => plan.priceOf(line));
      return price instanceof Refusal ? [] : [[line.row, price.price] as const];
    }),
  );

/** The lines of the bill with that many of one of them. */
function totalWith(plan: BillPlan, line: QuotedLine, quantity: number, before: Prices): number {
  const at = plan.lines.indexOf(line);
  const after = pricesOf(plan.changed(at, { ...(plan.rows[at] as BillLine), quantity }));
  const lost = plan.quoted.find(({ row }) => before.has(row) && !after.has(row));
  if (!lost) return sum(new Map([...after].filter(([row]) => before.has(row))));
  const hint = `${lineName(lost)} is not`;
  throw noAnswer("quantities", "such that the same lines are quoted", String(quantity), hint);
}
