import { refuse } from "../../sheet/package/file-refusal.ts";
import type { CellValue } from "../../units/cell.ts";

/**
 * A field and a line of a list are no longer than what a worksheet holds (Microsoft's specifications and limits of Excel).
 * Lines, fields in all and bytes are chosen: a thousand times the longest bill of a shop, and what a computer holds.
 */
export const MOST = { bytes: 67_108_864, lines: 100_000, fields: 16_384, letters: 32_767, all: 5_000_000 } as const;

/** Counts a part list as it is read, and refuses it as soon as it is too large: nothing is made of the rest. */
export class ListSize {
  private lines = 0;
  private fields = 0;
  private all = 0;

  field(cell: CellValue): void {
    const line = `part list line ${this.lines + 1}`;
    if (typeof cell === "string" && cell.length > MOST.letters)
      refuse("too-large", `${line}, a field,`, `at most ${MOST.letters} letters`, cell.length);
    if (++this.fields > MOST.fields) refuse("too-large", line, `at most ${MOST.fields} fields`, "more");
    if (++this.all > MOST.all) refuse("too-large", "part list", `at most ${MOST.all} fields in all`, "more");
  }

  line(): void {
    this.fields = 0;
    if (++this.lines > MOST.lines) refuse("too-large", "part list", `at most ${MOST.lines} lines`, "more");
  }
}
