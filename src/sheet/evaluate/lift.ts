import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { itemAt, widthOf } from "../../units/certain.ts";
import { withinLimit } from "./array-limit.ts";
import { isMatrix, NA } from "./value.ts";

type Liftable = CellValue | CellMatrix | undefined;

/**
 * Applies a scalar operation element by element as Excel's operators do: 1 x 1 stretches, a row meets a column as a
 * block, and where one side is too short the cell is #N/A. Rows that a whole-column range shares are computed once.
 */
export function lift<const Given extends readonly Liftable[]>(
  args: Given,
  body: (values: { [At in keyof Given]: CellValue }) => CellValue,
): CellMatrix {
  let rows = 1;
  let columns = 1;
  for (const arg of args) {
    if (!isMatrix(arg)) continue;
    rows = Math.max(rows, arg.length);
    columns = Math.max(columns, widthOf(arg));
  }
  const result: CellMatrix = new Array(rows);
  const before: (CellValue[] | undefined)[] = new Array(args.length);
  /** Rows that are not the same as the one before. */
  let made = 0;
  for (let r = 0; r < rows; r++) {
    let repeated = r > 0;
    const rowOf: (CellValue[] | undefined)[] = new Array(args.length);
    for (let i = 0; i < args.length; i++) {
      const arg = args[i];
      rowOf[i] = isMatrix(arg) ? (arg.length === 1 ? arg[0] : arg[r]) : undefined;
      if (rowOf[i] !== before[i]) repeated = false;
      before[i] = rowOf[i];
    }
    if (repeated) {
      result[r] = itemAt(result, r - 1);
      continue;
    }
    withinLimit(++made, columns);
    const out: CellValue[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const values: CellValue[] = new Array(args.length);
      let short = false;
      for (let i = 0; i < args.length; i++) {
        const arg = args[i];
        if (!isMatrix(arg)) {
          values[i] = arg as CellValue;
          continue;
        }
        const row = rowOf[i];
        const value = row === undefined ? undefined : row.length === 1 ? row[0] : row[c];
        if (value === undefined) short = true;
        else values[i] = value;
      }
      out[c] = short ? NA : body(values as { [At in keyof Given]: CellValue });
    }
    result[r] = out;
  }
  return result;
}
