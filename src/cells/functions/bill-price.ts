import { billPrice as answer } from "../bill/price.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billPrice = defineBillFunction({
  name: "BILL.PRICE",
  question: "What is to be asked for every line and for the order?",
  example: { formula: `=INDEX(SHOP.BILL.PRICE(${EXAMPLE_SHOP}),2,9)`, answer: 10.56 },
  source:
    "metal by its share of the sheets that are pulled less what goes back to the rack, labor and set-up at the stations' rates, overhead, margin (by definition); all figures of the workbook",
  answer,
});
