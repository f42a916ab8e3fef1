/** Puts a function's example into the selected cell. A cell that holds something is not written over. */
import type { Task } from "./task.ts";

export async function insertHere(formula: string, _task: Task): Promise<string> {
  return Excel.run(async (context) => {
    const cell = context.workbook.getActiveCell();
    cell.load("formulas,address");
    await context.sync();
    const held = cell.formulas[0]?.[0] as unknown;
    if (held !== "") return `${cell.address} holds something already: select an empty cell.`;
    cell.formulas = [[formula]];
    await context.sync();
    return `Inserted in ${cell.address}: change the example's arguments to your own cells.`;
  });
}
