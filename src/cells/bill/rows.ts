/** A bill's lines as rows of a spill. */
import { customerSays } from "../../bill/customer-says.ts";
import { lineName as nameOf } from "../../bill/line-name.ts";
import type { BillPlan, LineAnswer, QuotedLine } from "../../bill/plan.ts";
import { isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { SpillRow } from "../record/spill-columns.ts";

export { nameOf };

/** One or more rows a quoted line. A line that is not quoted, or has no answer, is one row that says why. */
export function quotedRows(plan: BillPlan, write: (line: QuotedLine) => SpillRow | readonly SpillRow[]): SpillRow[] {
  return plan.lines.flatMap((line) => {
    if (!isQuoted(line)) return unquotedRow(line, plan);
    const rows = refusalOr(() => write(line));
    return rows instanceof Refusal ? { Part: nameOf(line), Message: rows.message, Remark: customerSays(line) } : rows;
  });
}

/** A spill that has no such column drops the description, and what the customer is told. */
const unquotedRow = (line: LineAnswer, plan: BillPlan): SpillRow => ({
  Part: nameOf(line),
  Description: line.plan?.line.description,
  Message: noQuoteSays(line.findings, plan.shop.system),
  Remark: customerSays(line),
});
