/** For answers that never come: cells at #BUSY! after a sleep, a lost connection or an update of the add-in. */
import type { Task } from "./task.ts";

export async function recalculateAll(_task: Task): Promise<string> {
  return Excel.run(async (context) => {
    context.application.calculate("FullRebuild");
    await context.sync();
    return "Everything is being calculated again. Cells that stay at #BUSY!: close every Excel window, open again, and keep this pane open meanwhile.";
  });
}
