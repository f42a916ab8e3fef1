/** Edits that can be taken back and made again, the last first. */
import type { Edit, Place } from "./protocol.ts";

export interface Change extends Place {
  readonly before: string;
  readonly after: string;
}

export class History {
  #done: Change[] = [];
  #undone: Change[] = [];

  made(change: Change): void {
    this.#done.push(change);
    this.#undone = [];
  }

  get canUndo(): boolean {
    return this.#done.length > 0;
  }

  get canRedo(): boolean {
    return this.#undone.length > 0;
  }

  /** The edit that takes the last change back, or makes the last one taken back again; it counts once `run` is through. */
  async step(which: "undo" | "redo", run: (edit: Edit) => Promise<void>): Promise<void> {
    const [from, to] = which === "undo" ? [this.#done, this.#undone] : [this.#undone, this.#done];
    const change = from.at(-1);
    if (!change) return;
    const { sheet, row, column, before, after } = change;
    await run({ sheet, row, column, typed: which === "undo" ? before : after });
    from.pop();
    to.push(change);
  }
}
