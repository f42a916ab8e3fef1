import { CellError } from "../../units/cell.ts";
import type { Frame } from "../evaluate/frame.ts";
import { RangeRef, type Value } from "../evaluate/value.ts";

interface Running {
  bottom: number;
  sum: number;
}

/**
 * SUM($A$2:A9) in every row of a column would add n*n/2 cells. Cells do not change within one recalculation, so the sum
 * of a range that starts where the last one started goes on from there: the same additions in the same order.
 * Single columns only; undefined when the shortcut does not apply.
 */
export function runningSum(frame: Frame, arg: Value): number | undefined {
  if (!(arg instanceof RangeRef) || arg.left !== arg.right || arg.rows < 8) return undefined;
  // Continuing from an earlier sum still counts as reading the whole range.
  frame.grid.column(arg.sheet, arg.left, arg.top, arg.bottom);
  const key = `sum ${arg.sheet} ${arg.left} ${arg.top}`;
  const known = frame.grid.memo.get(key) as Running | undefined;
  if (known !== undefined && known.bottom === arg.bottom) return known.sum;
  const goOn = known !== undefined && known.bottom < arg.bottom;
  let sum = goOn ? known.sum : 0;
  let error = false;
  const from = goOn ? known.bottom + 1 : arg.top;
  frame.grid.visit(new RangeRef(arg.sheet, from, arg.left, arg.bottom, arg.left), (value) => {
    if (typeof value === "number") sum += value;
    else if (value instanceof CellError) error = true;
  });
  if (error) return undefined;
  if (goOn) {
    known.bottom = arg.bottom;
    known.sum = sum;
  } else if (known === undefined) frame.grid.memo.set(key, { bottom: arg.bottom, sum });
  return sum;
}
