import type { CellValue } from "../../units/cell.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";
import type { Iteration } from "../workbook/workbook.ts";

/** Evaluations that one iterative calculation may take; beyond, the circle is reported as one. */
const MOST_STEPS = 10_000_000;

/**
 * Iterative calculation as Excel describes it: the cells of the circles and who reads them, sheet by sheet, from left to
 * right and from top to bottom, until no number changes by more than the workbook's `delta` or `count` rounds are done.
 * False where it would take too long.
 */
export function iterate(
  cells: readonly FormulaCell[],
  { count, delta }: Iteration,
  evaluate: (cell: FormulaCell) => void,
  shown: (cell: FormulaCell) => CellValue | undefined,
): boolean {
  if (cells.length * count > MOST_STEPS) return false;
  const order = [...cells].sort((a, b) => a.sheet - b.sheet || a.row - b.row || a.column - b.column);
  for (let round = 0; round < count; round++) {
    let moved = false;
    for (const cell of order) {
      const before = shown(cell);
      evaluate(cell);
      if (!near(before, shown(cell), delta)) moved = true;
    }
    if (!moved) break;
  }
  return true;
}

const near = (a: CellValue | undefined, b: CellValue | undefined, delta: number): boolean =>
  typeof a === "number" && typeof b === "number" ? Math.abs(a - b) <= delta : a === b;
