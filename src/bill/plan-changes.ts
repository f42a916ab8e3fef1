/** What an edit of the bill has changed about its lines: how many, and which status they have now. */
import { itemAt } from "../units/certain.ts";
import type { BillPlan, LineAnswer } from "./plan.ts";
import { STATUSES } from "./problems.ts";
import { notesSay, problemsSay } from "./says.ts";

/** "2 lines changed, 1 now clear." Lines are told by their place: both plans are of the same rows. */
export function changesSay(before: BillPlan, after: BillPlan): string {
  const changed = after.lines
    .map((line, i) => ({ line, was: itemAt(before.lines, i) }))
    .filter(({ line, was }) => told(line, after) !== told(was, before));
  if (changed.length === 0) return "No line changed.";
  const became = STATUSES.flatMap((status) => {
    const count = changed.filter(({ line, was }) => line.status === status && was.status !== status).length;
    return count === 0 ? [] : [`${count} now ${status}`];
  });
  return `${[`${changed.length} ${changed.length === 1 ? "line" : "lines"} changed`, ...became].join(", ")}.`;
}

/** Whatever a reader of the checks sees of a line. */
const told = ({ status, findings, plan, cutter }: LineAnswer, { shop: { system } }: BillPlan): string =>
  JSON.stringify([
    status,
    problemsSay(findings, system),
    notesSay(findings, system),
    plan && [
      plan.blank.length,
      plan.blank.width,
      plan.blanks,
      plan.tools && [plan.tools.brake.name, plan.tools.die.name, plan.tools.punch?.name],
    ],
    cutter,
  ]);
