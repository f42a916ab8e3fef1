import { priceBreaks as breaks } from "../../calc/cost/price-breaks.ts";
import { PROFIT_BASES } from "../../calc/cost/price-for-margin.ts";
import { choice } from "../parameters/choice.ts";
import { quantities } from "../parameters/list.ts";
import { belowOne, moneyAmount, profitShare } from "../parameters/money.ts";

import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Quantity", "Unit cost", "Unit price", "Price"] as const;

export const priceBreaks = defineFunction({
  name: "PRICE.BREAKS",
  question: "What does one piece cost by quantity?",
  parameters: {
    setUp: moneyAmount("What the set-ups cost, once"),
    each: moneyAmount("What one piece costs beyond that"),
    quantities: quantities('Quantities: a range, or text such as "1; 10; 100"'),
    margin: profitShare(),
    basis: choice({
      description: 'Profit as "margin", a share of the price, or "markup", a share of the cost',
      words: PROFIT_BASES,
      fallback: "margin",
    }),
  },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: {
    formula: '=INDEX(SHOP.PRICE.BREAKS(70,7,"1; 10",0.3),3,3)',
    answer: 20,
  },
  source: "set-up spread over the quantity, margin, unit price up to the cent (derived)",
  calculate: ({ setUp, each, quantities, margin, basis }, { work }) => [
    [...COLUMNS],
    ...breaks(quantities, { setUp, each }, { share: belowOne(margin, basis), basis }, work).map(
      ({ quantity, unitCost, unitPrice, price }) => [quantity, unitCost, unitPrice, price],
    ),
  ],
});
