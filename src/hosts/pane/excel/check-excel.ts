/** Whether this Excel hands blank cells over as blank, tried on a sheet of its own that is removed again. */
import { NAMESPACE } from "../../../cells/catalogue.ts";
import { ZEROS } from "../../../job/state-words.ts";
import type { Task } from "./task.ts";

const SHEET = "Bracket Bill check";
const BLANKS = 2;
const FORMULA = `=${NAMESPACE}.EMPTY.CELLS(B1:B${BLANKS})`;
const [EVERY_MS, TRIES] = [200, 50];

export async function checkExcel(task: Task): Promise<string> {
  return Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.add(SHEET);
    const cell = sheet.getRangeByIndexes(0, 0, 1, 1);
    try {
      cell.formulas = [[FORMULA]];
      for (let tried = 0; tried < TRIES; tried++) {
        task.step("Waiting for an answer");
        cell.load("values");
        await context.sync();
        const answer = cell.values[0]?.[0] as unknown;
        if (typeof answer === "number") return answer === BLANKS ? "Blank cells arrive as blank: right." : ZEROS;
        if (answer === "#NAME?")
          return "This Excel does not know the functions: close every Excel window and open again.";
        await new Promise((later) => setTimeout(later, EVERY_MS));
      }
      return "The functions did not answer: press Stuck? Recalculate all, then check again.";
    } finally {
      sheet.delete();
      await context.sync();
    }
  });
}
