/** Edits that can be taken back and made again, the last first; cells that were changed by one click go together. */
import type { DoneEdit, Edit } from "./protocol.ts";

export class History {
  #done: (readonly DoneEdit[])[] = [];
  #undone: (readonly DoneEdit[])[] = [];

  made(edits: readonly DoneEdit[]): void {
    this.#done.push(edits);
    this.#undone = [];
  }

  clear(): void {
    this.#done = [];
    this.#undone = [];
  }

  get canUndo(): boolean {
    return this.#done.length > 0;
  }

  get canRedo(): boolean {
    return this.#undone.length > 0;
  }

  /** The edits that take the last change back, or make the last one taken back again; they count once `run` is through. */
  async step(which: "undo" | "redo", run: (edits: readonly Edit[]) => Promise<void>): Promise<void> {
    const [from, to] = which === "undo" ? [this.#done, this.#undone] : [this.#undone, this.#done];
    const edits = from.at(-1);
    if (!edits) return;
    await run(
      edits.map(({ sheet, row, column, before, after }) => ({
        sheet,
        row,
        column,
        typed: which === "undo" ? before : after,
      })),
    );
    from.pop();
    to.push(edits);
  }
}
