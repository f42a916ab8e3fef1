import { lineName } from "../../bill/line-name.ts";
import { liftOf } from "../../bill/lines/lifting.ts";
import { isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSheets = defineBillFunction({
  name: "BILL.SHEETS",
  question: "Which sheets must be bought, what do they cost and weigh, and who can lift them?",
  example: { formula: `=INDEX(SHOP.BILL.SHEETS(${EXAMPLE_CUTTERS}),2,7)`, answer: 1 },
  source: "sheets of the cut plan (derived)",
  answer: (plan, { work }) => {
    const { shop } = plan;
    const rows = plan.groups.flatMap(({ material, cutter, uses }) =>
      uses.map(
        ({ sheet, count, weight, price, pieces }): SpillRow<"BILL.SHEETS"> => ({
          Material: material.name,
          Thickness: sheet.thickness,
          Stock: sheet.name,
          Length: sheet.length,
          Width: sheet.width,
          "Cut on": cutter,
          Sheets: count,
          "Price each": sheet.price,
          Price: price,
          "Lead days": sheet.leadDays,
          Certificate: [...pieces.keys()].some(({ line }) => line.wantsCertificate) ? "wanted" : "",
          "Weight each": sheet.weight,
          "Bundle weight": weight,
          Handling: liftOf(sheet.weight, shop.rates),
        }),
      ),
    );
    const total = plan.groups.flatMap(({ uses }) => uses).reduce((sum, { price }) => sum + (price ?? 0), 0);
    step(work, "total", "price of all sheets", total, "money", "sum");
    const left = plan.lines
      .filter((line) => !isQuoted(line))
      .map(
        (line): SpillRow<"BILL.SHEETS"> => ({
          Stock: lineName(line),
          Message: noQuoteSays(line.findings, shop.system),
        }),
      );
    return spill("BILL.SHEETS", [...rows, ...left], shop.system);
  },
});
