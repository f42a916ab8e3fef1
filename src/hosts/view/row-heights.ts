/** Where every row of a grid lies: all have one height, except headings and sentences. */
import { cellAt, itemAt, missing } from "../../units/certain.ts";
import type { SheetView } from "./protocol.ts";

/** Letters on a line of a sentence, whose width is in grid.css; px of such a line, and around them. */
const [ON_A_LINE, LINE, AROUND] = [130, 17, 11];

export class RowHeights {
  readonly usual = 28;
  readonly tall = 58;
  readonly #tops: number[] = [0];
  readonly #notes: ReadonlySet<number>;

  constructor({ rows, headings, cells }: SheetView) {
    const first = headings[0] ?? 0;
    const notes = cells.flatMap((row, i) => {
      const isAlone = row[0]?.kind === "text" && row.slice(1).every((cell) => cell === null);
      const isAboveTable = i < first || headings.includes(i + 1);
      return isAlone && isAboveTable && !headings.includes(i) ? [i] : [];
    });
    this.#notes = new Set(notes);
    const heightOf = (row: number): number => {
      if (headings.includes(row)) return this.tall;
      return this.#notes.has(row)
        ? LINE * Math.ceil((cellAt(cells, row, 0) ?? missing()).text.length / ON_A_LINE) + AROUND
        : this.usual;
    };
    for (let row = 0; row < rows; row++) this.#tops.push(itemAt(this.#tops, row) + heightOf(row));
  }

  /** A sentence over the whole width. */
  isNote(row: number): boolean {
    return this.#notes.has(row);
  }

  of(row: number): number {
    return itemAt(this.#tops, row + 1) - itemAt(this.#tops, row);
  }

  top(row: number): number {
    return itemAt(this.#tops, row);
  }

  /** The row at a height. */
  at(height: number): number {
    let [low, high] = [0, this.#tops.length - 2];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (itemAt(this.#tops, middle) <= height) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
