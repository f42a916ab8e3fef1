/** A bill's lines as rows of a spill. */
import { customerSays } from "../../bill/customer-says.ts";
import { lineName } from "../../bill/line-name.ts";
import type { BillPlan, LineAnswer, QuotedLine } from "../../bill/plan.ts";
import { isQuoted } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { SpillRow } from "../record/spill-columns.ts";

/** Spills with one or more rows a line. */
type LineSpill = "BILL.BLANKS" | "BILL.ROUTE" | "BILL.TIMES" | "BILL.WHATIF" | "BILL.PRICE";

/** One or more rows a quoted line. A line that is not quoted, or has no answer, is one row that says why. */
export function quotedRows<N extends LineSpill>(
  plan: BillPlan,
  write: (line: QuotedLine) => SpillRow<N> | readonly SpillRow<N>[],
): SpillRow<N>[] {
  return plan.lines.flatMap((line) => {
    if (!isQuoted(line)) return unquotedRow(line, plan) as SpillRow<N>;
    const rows = refusalOr(() => write(line));
    if (!(rows instanceof Refusal)) return rows;
    return { Part: lineName(line), Message: rows.message, Remark: customerSays(line) } as SpillRow<N>;
  });
}

/** A spill that has no such column drops the description, and what the customer is told. */
const unquotedRow = (line: LineAnswer, plan: BillPlan): SpillRow<LineSpill> => ({
  Part: lineName(line),
  Description: line.plan?.line.description,
  Message: noQuoteSays(line.findings, plan.shop.system),
  Remark: customerSays(line),
});
