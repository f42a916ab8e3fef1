/** Types what would mend a line into the bill, says what has changed by it, and can write back what stood there. */

import { changesSay } from "../../../bill/plan-changes.ts";
import type { FixCell } from "../../../job/fix-cells.ts";
import { type JobPlan, jobPlan } from "../../../job/job-plan.ts";
import { itemAt } from "../../../units/certain.ts";
import { readBook } from "./read-book.ts";
import type { Task } from "./task.ts";

interface Applied {
  readonly words: string;
  /** Writes back what stood in the cells; undefined where nothing was written. */
  readonly undo: ((task: Task) => Promise<string>) | undefined;
}

/** A cell that holds a formula is not written over. */
export async function applyFix(task: Task, job: JobPlan, cells: readonly FixCell[]): Promise<Applied> {
  const sheetName = job.table.sheet.name;
  return Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    const ranges = cells.map(({ row, column }) => sheet.getRangeByIndexes(row, column, 1, 1));
    for (const range of ranges) range.load("formulas,address");
    await context.sync();
    const before = ranges.map(({ formulas }) => formulas[0]?.[0] as unknown);
    const held = before.findIndex((formula) => typeof formula === "string" && formula.startsWith("="));
    if (held >= 0)
      return {
        words: `${itemAt(ranges, held).address} holds a formula: change what it reads instead.`,
        undo: undefined,
      };
    task.step("Typing the fix into the bill");
    ranges.forEach((range, i) => {
      range.values = [[itemAt(cells, i).value ?? ""]];
    });
    await context.sync();
    const after = jobPlan(await readBook(context));
    const where = ranges.map(({ address }) => address).join(", ");
    const words = after ? changesSay(job.plan, after.plan) : "";
    return { words: `${where} typed: ${words}`, undo: () => writeBack(sheetName, cells, before) };
  });
}

const writeBack = (sheetName: string, cells: readonly FixCell[], before: readonly unknown[]): Promise<string> =>
  Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    cells.forEach(({ row, column }, i) => {
      sheet.getRangeByIndexes(row, column, 1, 1).values = [[before[i]]];
    });
    await context.sync();
    return "Undone: the bill is as it was before.";
  });
