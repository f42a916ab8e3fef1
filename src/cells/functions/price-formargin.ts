import { PROFIT_BASES, priceForMargin } from "../../calc/cost/price-for-margin.ts";
import { choice } from "../parameters/choice.ts";
import { belowOne, moneyAmount, profitShare } from "../parameters/money.ts";
import { defineFunction } from "../record/record.ts";

export const priceFormargin = defineFunction({
  name: "PRICE.FORMARGIN",
  question: "What price leaves this margin?",
  parameters: {
    cost: moneyAmount("What it costs"),
    margin: profitShare(),
    basis: choice({
      description: 'Profit as "margin", a share of the price, or "markup", a share of the cost',
      words: PROFIT_BASES,
      fallback: "margin",
    }),
  },
  result: { kind: "money" },
  example: {
    formula: "=SHOP.PRICE.FORMARGIN(70,0.3)",
    answer: 100,
  },
  source: "cost / (1 - margin) rounded up to the cent, by definition of the margin",
  calculate: ({ cost, margin, basis }, { work }) => priceForMargin(cost, belowOne(margin, basis), basis, work),
});
