/** The files that a plan is made from. What is missing or wrong in them is refused by name, before anything is planned. */
import type { BillPlan } from "../../bill/plan.ts";
import { unreadColumns } from "../../cells/tables/unread-columns.ts";
import type { Book } from "../../job/book.ts";
import { headerSays, jobPlan, planIn, shopOf } from "../../job/job-plan.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { FileRefusal, refusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { Refusal } from "../../units/refusal.ts";
import type { CommandContext } from "./command.ts";
import { partsOf } from "./parts-file.ts";
import { bytesOf } from "./read-file.ts";

const REFUSED = 2;
/** A list of a million parts is no larger. */
const MOST_PARTS_BYTES = 64 * 1024 * 1024;

/** Runs what needs files: a refusal is said on standard error and is exit 2; nothing of it goes to standard output. */
export function orRefused(context: CommandContext, action: () => number): number {
  try {
    return action();
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    context.note(`${problem.message}\n`);
    return REFUSED;
  }
}

/** A part list in the shop of a workbook. */
export function planOfParts(parts: string, workbook: string, { note }: Pick<CommandContext, "note">): BillPlan {
  const shop = shopOf(bookIn(workbook));
  refuseMissing(workbook, shop.missing);
  const cells = partsOf(bytesOf(parts, MOST_PARTS_BYTES));
  noteUnread(parts, cells, note);
  return planIn(shop, cells, "parts");
}

/** The bill and the shop of one workbook. */
export function planOfWorkbook(workbook: string, { note }: Pick<CommandContext, "note">): BillPlan {
  const job = jobPlan(bookIn(workbook));
  if (!job)
    throw refusal("unreadable", workbook, `a workbook with a bill, whose header has ${headerSays("bill")}`, "none");
  refuseMissing(workbook, job.missing);
  noteUnread(workbook, job.table.matrix, note);
  return job.plan;
}

/** Columns of the bill that nothing reads are named on standard error; the answer stands. */
function noteUnread(file: string, bill: CellMatrix, note: CommandContext["note"]): void {
  for (const words of unreadColumns(bill)) note(`${file}: ${words}\n`);
}

/** Without a table, or with a wrong one left out, every answer would be another one. */
function refuseMissing(workbook: string, missing: readonly string[]): void {
  if (missing.length > 0) throw new FileRefusal("unreadable", missing.map((each) => `${workbook}: ${each}`).join("\n"));
}

const bookIn = (file: string): Book => {
  try {
    return bookOf(readWorkbook(bytesOf(file)));
  } catch (problem) {
    if (!(problem instanceof FileRefusal) || problem.message.startsWith(file)) throw problem;
    throw new FileRefusal(problem.reason, `${file}: ${problem.message}`);
  }
};
