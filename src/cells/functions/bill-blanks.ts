import { step } from "../../units/working.ts";
import { quotedRows } from "../bill/rows.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billBlanks = defineBillFunction({
  name: "BILL.BLANKS",
  question: "How big is the blank of every line, how many, and which way must the grain run?",
  example: { formula: `=ROUND(INDEX(SHOP.BILL.BLANKS(${EXAMPLE_CUTTERS}),2,4),4)`, answer: 4.5483 },
  source: "flats as AIR.FLAT makes them, with the shop's own strips (derived), allowances of the workbook",
  answer: (plan, { work }) => {
    const total = plan.quoted.reduce((sum, { plan: { blank, blanks } }) => sum + blanks * blank.weight, 0);
    step(work, "W", "weight of all blanks", total, "kg", "sum");
    const rows = quotedRows(
      plan,
      ({ part, plan: { line, blank, blanks, sheetThickness } }): SpillRow<"BILL.BLANKS"> => ({
        Part: part,
        Material: line.material.name,
        Thickness: sheetThickness,
        Length: blank.length,
        Width: blank.width,
        Quantity: blanks,
        Ordered: line.quantity,
        Grain: blank.grain,
        "Cut path": blank.path,
        Pierces: blank.pierces,
        "Weight each": blank.weight,
        Weight: blanks * blank.weight,
      }),
    );
    return spill("BILL.BLANKS", rows, plan.shop.system);
  },
});
