/** Where every row of a grid lies: all are of one height, but headings and long sentences, which are of another. */
import type { SheetView } from "./protocol.ts";

const LONG = 90; // letters of a sentence that takes two lines

export class RowHeights {
  readonly usual = 28;
  readonly tall = 58;
  readonly #tops: number[] = [0];
  readonly #tall: ReadonlySet<number>;
  readonly #notes: ReadonlySet<number>;

  constructor({ rows, headings, cells }: SheetView) {
    const first = headings[0] ?? 0;
    const notes = cells.flatMap((row, i) => {
      const isAlone = row[0]?.kind === "text" && row.slice(1).every((cell) => cell === null);
      const isAboveTable = i < first || headings.includes(i + 1);
      return isAlone && isAboveTable && !headings.includes(i) ? [i] : [];
    });
    this.#notes = new Set(notes);
    this.#tall = new Set([...headings, ...notes.filter((row) => cells[row]![0]!.text.length > LONG)]);
    for (let row = 0; row < rows; row++)
      this.#tops.push(this.#tops[row]! + (this.#tall.has(row) ? this.tall : this.usual));
  }

  /** A sentence over the whole width. */
  isNote(row: number): boolean {
    return this.#notes.has(row);
  }

  isTall(row: number): boolean {
    return this.#tall.has(row);
  }

  top(row: number): number {
    return this.#tops[row]!;
  }

  /** The row at a height. */
  at(height: number): number {
    let [low, high] = [0, this.#tops.length - 2];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#tops[middle]! <= height) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
