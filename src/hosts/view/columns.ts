/** How wide the columns of a grid are, and how they are aligned: columns of numbers right, of words left. */

import { columnLetters } from "../../sheet/formula/address.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import type { SheetView, ShownCell } from "./protocol.ts";

/** px: the first holds names that must be told apart, yet leave room for the rest. */
const [LEAST, MOST, MOST_FIRST] = [40, 420, 170];
const LETTER = 7.6; // px, of a heading's bold letters
const AROUND = 16;

export class Columns {
  readonly widths: readonly number[];
  /** By heading row and column: most of what stands below is a number. */
  readonly #numbers = new Map<string, boolean>();
  readonly #headings: readonly number[];

  constructor({ widths, headings, cells }: SheetView) {
    this.#headings = headings;
    this.widths = widths.map((width, column) => {
      const words = headings.flatMap((row) => (cells[row]?.[column]?.text ?? "").split(/\s+/));
      const longest = Math.max(0, ...words.map((word) => word.length));
      const wanted = Math.max(width, Math.round(longest * LETTER + AROUND), LEAST);
      return Math.min(wanted, column === 0 ? MOST_FIRST : MOST);
    });
    headings.forEach((heading, i) => {
      widths.forEach((_, column) => {
        const below = cells.slice(heading + 1, headings[i + 1]).map((row) => row[column]);
        const count = (kind: ShownCell["kind"]) => below.filter((cell) => cell?.kind === kind).length;
        this.#numbers.set(`${heading} ${column}`, count("number") > count("text"));
      });
    });
  }

  /** Widths for the browser, and the row of letters; `numbers`: px of the column of row numbers. */
  head(numbers: number): { columns: HTMLElement; letters: HTMLElement } {
    const columns = [numbers, ...this.widths].map((width) => element("col", { width: String(width) }));
    const letters = this.widths.map((_, i) => element("th", { scope: "col" }, columnLetters(i)));
    return {
      columns: element("colgroup", {}, ...columns),
      letters: element("tr", { class: "letters" }, element("td"), ...letters),
    };
  }

  /** px from the left edge of the second column, which is where a column comes out, and from that of the table. */
  edges(column: number): readonly [left: number, right: number] {
    const right = this.widths.slice(0, column + 1).reduce((sum, width) => sum + width, 0);
    return [right - itemAt(this.widths, column) - firstOf(this.widths), right];
  }

  isRight({ row, column }: { readonly row: number; readonly column: number }, { kind }: ShownCell): boolean {
    const heading = this.#headings.findLast((one) => one <= row);
    if (column === 0) return false;
    return heading === undefined ? kind === "number" : (this.#numbers.get(`${heading} ${column}`) ?? kind === "number");
  }
}
