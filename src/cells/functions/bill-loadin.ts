import { lineName } from "../../bill/line-name.ts";
import type { LoadedLine } from "../../bill/load/plan-load.ts";
import { isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billLoadin = defineBillFunction({
  name: "BILL.LOADIN",
  question: "In which order are the parts loaded, in which stacks, and what goes on the labels?",
  example: { formula: `=INDEX(SHOP.BILL.LOADIN(${EXAMPLE_SHOP}),2,3)`, answer: 1 },
  source:
    "first needed, last loaded; heavy parts at the bottom (common practice); one person by LIFT.LIMIT or the shop's limit",
  answer: (plan, { work }) => {
    const { system } = plan.shop;
    const loaded = plan.load;
    step(work, "W", "weight of the load", plan.totals.weight, "kg", "sum of blanks; holes are not deducted (derived)");
    const left = plan.lines
      .filter((line) => !isQuoted(line))
      .map((line) => ({ Part: lineName(line), Message: noQuoteSays(line.findings, system) }));
    return spill("BILL.LOADIN", [...loaded.map((line, i) => loadRow(line, i, system)), ...left], system);
  },
});

function loadRow(loaded: LoadedLine, index: number, system: UnitSystem): SpillRow<"BILL.LOADIN"> {
  const { plan, stacks, stackWeight, liftPiece, liftStack } = loaded;
  const { line, blank } = plan;
  const label = [
    line.area,
    line.part,
    `${line.quantity} pcs`,
    line.spares > 0 ? `${line.spares} spare` : "",
    show(stackWeight, "mass", system, 2),
  ];
  return {
    Order: index + 1,
    Area: line.area,
    Stacks: stacks,
    Part: line.part,
    Quantity: line.quantity,
    Spares: line.spares,
    "Weight each": blank.weight,
    "Stack weight": stackWeight,
    Handling: `${liftPiece} a piece, ${liftStack} a stack`,
    Label: label.filter((text) => text !== "").join(" / "),
  };
}
