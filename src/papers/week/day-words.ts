/** What a line is at a station, for those who stand there: what it is, how many holes or units a piece, of which sheets. */

import type { BillPlan } from "../../bill/plan.ts";
import type { PlannedStep } from "../../bill/week/week.ts";
import { entryOf } from "../../units/certain.ts";
import { show, showNumber, showThickness } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { holesCounted } from "../holes.ts";

/** "Gusset; 4 holes 0.25 in", "Leg; 2 a piece"; "" where the bill says neither. */
export function workSays({ station, line: { plan } }: PlannedStep, system: UnitSystem): string {
  const { description, operations, holes } = plan.line;
  const amount = operations.find((each) => each.station.toLowerCase() === station.name.toLowerCase())?.amount;
  return [
    description,
    station.basis === "hole" && holes > 0 ? holesCounted(plan.line, system) : "",
    amount === undefined ? "" : `${showNumber(amount, 7)} a piece`,
  ]
    .filter((words) => words !== "")
    .join("; ");
}

/** "A36 0.250 in (1/4)", and at a machine that cuts the size of the blank and the sheets of the cut list that it comes from. */
export function sheetSays(step: PlannedStep, bill: BillPlan): string {
  const { line, blank, sheetThickness } = step.line.plan;
  const { system } = bill.shop;
  const length = (value: number) => show(value, "length", system, 3);
  const sheet = `${line.material.name} ${showThickness(sheetThickness, system)}`;
  const isCut = step.change > 0 && step.setFor === `${line.material.name} ${line.thickness}`;
  return isCut
    ? [`${sheet}, blank ${length(blank.length)} x ${length(blank.width)}`, ...stockSays(line.row, bill)].join(", ")
    : sheet;
}

/** "of 4x8 A36 (sheet 1 of 2)", as the job's cut list counts them. */
function stockSays(row: number, { groups }: BillPlan): string[] {
  const group = groups.find(({ lines }) => lines.some(({ line }) => line.row === row));
  if (!group) return [];
  const { plan, jet, lineOf, sheetOf } = group;
  const all = plan
    ? plan.patterns.map(({ stock, yields }) => ({ stock, blanks: yields.map(({ blank }) => blank) }))
    : jet.map(({ stock, placed }) => ({ stock, blanks: placed.map(({ blank }) => blank) }));
  const places = new Map<string, number[]>();
  all.forEach(({ stock, blanks }, i) => {
    if (!blanks.some((blank) => lineOf.get(blank)?.line.row === row)) return;
    const { name } = entryOf(sheetOf, stock);
    places.set(name, [...(places.get(name) ?? []), i + 1]);
  });
  return [...places].map(
    ([name, own]) => `of ${name} (${own.length === 1 ? "sheet" : "sheets"} ${own.join(", ")} of ${all.length})`,
  );
}
