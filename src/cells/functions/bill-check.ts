import { mendSays } from "../../bill/fix-says.ts";
import { lineName } from "../../bill/line-name.ts";
import type { BillPlan, LineAnswer } from "../../bill/plan.ts";
import { notesSay, problemsSay } from "../../bill/says.ts";
import { statusOf } from "../../calc/finding.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billCheck = defineBillFunction({
  name: "BILL.CHECK",
  question: "What is wrong with every line, and what would fix it?",
  example: { formula: `=INDEX(SHOP.BILL.CHECK(${EXAMPLE_CUTTERS}),2,2)`, answer: "clear" },
  source:
    "BEND.CHECK and SHEAR.CHECK on every line, bend order, stock, lifting; every fix tried by planning the line again; the plate decides",
  answer: (plan, { work }) => {
    const all = plan.lines.flatMap(({ findings }) => findings);
    step(work, "status", "worst of all lines", statusOf(all), "", "clear: no problem found against the tables given");
    return spill(
      "BILL.CHECK",
      plan.lines.map((line) => checkRow(line, plan)),
      plan.shop.system,
    );
  },
});

function checkRow(line: LineAnswer, plan: BillPlan): SpillRow<"BILL.CHECK"> {
  const { system } = plan.shop;
  const fix = plan.fix(line);
  const said: SpillRow<"BILL.CHECK"> = {
    Part: lineName(line),
    Status: line.status,
    Sentence: problemsSay(line.findings, system).join(" "),
    Notes: notesSay(line.findings, system).join(" "),
    Fix: mendSays(line.findings, fix, system),
    Then: fix?.reaches,
    "Cut on": line.cutter,
    Quoted: line.isQuoted ? "yes" : "no",
  };
  if (!line.plan) return said;
  const { blank, tools, bend, force, acceptance, stack } = line.plan;
  return {
    ...said,
    Brake: tools?.brake.name,
    Die: tools?.die.name,
    Punch: tools?.punch?.name,
    "Flat length": blank.length,
    "Flat width": blank.width,
    Radius: bend?.radius,
    Deduction: bend?.deduction,
    Method: bend?.method,
    Force: force?.expected,
    "Worst force": force?.worst,
    "Weight each": blank.weight,
    "Drawing radius": acceptance,
    Tolerance: stack?.verdict,
    "Worst spread": stack?.worst,
    "Drawing tolerance": line.plan.line.tolerance,
    Accepted: line.plan.line.accepted,
    Description: line.plan.line.description,
    Quantity: line.plan.line.quantity,
    Material: line.plan.line.material.name,
    Thickness: line.plan.line.thickness,
  };
}
