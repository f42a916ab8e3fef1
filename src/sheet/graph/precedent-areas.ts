import type { Precedent } from "../evaluate/precedent.ts";
import { wrap } from "../evaluate/reference-code.ts";
import { LAST_COLUMN, LAST_ROW } from "../evaluate/value.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";

/** The ranges a formula names, seen from its cell; of all of them, or of one. */
export function precedentAreas(
  cell: FormulaCell,
  see: (sheet: number, top: number, left: number, bottom: number, right: number) => void,
  only?: Precedent,
): void {
  const precedents = cell.template?.precedents;
  if (precedents === undefined) return;
  const { row, column } = cell;
  for (const p of precedents) {
    if (only && p !== only) continue;
    const top = p.relativeTop ? wrap(p.top + row, LAST_ROW) : p.top;
    const bottom = p.relativeBottom ? wrap(p.bottom + row, LAST_ROW) : p.bottom;
    const left = p.relativeLeft ? wrap(p.left + column, LAST_COLUMN) : p.left;
    const right = p.relativeRight ? wrap(p.right + column, LAST_COLUMN) : p.right;
    see(
      p.sheet < 0 ? cell.sheet : p.sheet,
      Math.min(top, bottom),
      Math.min(left, right),
      Math.max(top, bottom),
      Math.max(left, right),
    );
  }
}
