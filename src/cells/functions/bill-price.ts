import type { BillPlan, QuotedLine } from "../../bill/plan.ts";
import { COMMON_WORTH_SAYS, vendorSays, withoutSays } from "../../bill/says.ts";
import { quotedRows } from "../bill/rows.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billPrice = defineBillFunction({
  name: "BILL.PRICE",
  question: "What should every line and the order be charged?",
  example: { formula: `=INDEX(SHOP.BILL.PRICE(${EXAMPLE_SHOP}),2,9)`, answer: 10.56 },
  source:
    "metal by its share of the sheets that are pulled less what goes back to the rack, labor and set-up at the stations' rates, overhead, margin (by definition); all figures of the workbook",
  answer: (plan) => {
    const { charges } = plan.money;
    const lines = quotedRows(plan, (line): SpillRow<"BILL.PRICE"> => {
      const price = plan.priceOf(line);
      return {
        Part: line.part,
        Quantity: line.plan.line.quantity,
        Material: price.material,
        Labor: price.labor,
        "Set-up": price.setUp,
        Outside: price.outside,
        Overhead: price.overhead,
        Cost: price.cost,
        "Unit price": price.unitPrice,
        Price: price.price,
        Note: noteOf(line, plan),
        Description: line.plan.line.description,
        Extras: price.extras,
      };
    });
    const rows: SpillRow<"BILL.PRICE">[] = [
      ...lines,
      { Part: "Minimum charge", Price: charges.minimum, Note: "up to the least order the shop takes" },
      {
        Part: "Rush",
        Price: charges.rush,
        Note: plan.shop.job.isRush ? "on the lines and the minimum" : "not asked for",
      },
      { Part: "Crate", Price: charges.crate },
      { Part: "Truck", Price: charges.truck },
      { Part: "Tax", Price: charges.tax, Note: "on everything above" },
      { Part: "Total", Price: charges.total, Note: withoutSays(plan.totals.unpriced) },
    ];
    return spill("BILL.PRICE", rows, plan.shop.system);
  },
});

const noteOf = (line: QuotedLine, plan: BillPlan): string =>
  [
    `cut on the ${line.cutter}`,
    ...(plan.money.commonWorth.has(line.plan) ? [COMMON_WORTH_SAYS] : []),
    ...plan.workOf(line).outside.map(({ station }) => vendorSays(station, line.plan.line.holes, plan.shop.system)),
  ].join("; ");
