/**
 * GETPIVOTDATA: the figure that stands in a pivot table for the items named (Microsoft's description, memory). Like Excel
 * it reads the table as it was last refreshed, so the answer is a cell of it; what its parts do not say keeps Excel's value.
 */
import { CellError, type CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import type { Pivot, PivotAxis } from "../evaluate/pivot.ts";
import { RangeRef, REF } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";

const unsure = (why: string): never => keep("unknown-function", `GETPIVOTDATA ${why}`);

/** The data field of that name, or the only one that sums up the field of that name. */
function dataOf({ data }: Pivot, asked: string): number {
  const own = data.findIndex(({ name }) => name === asked);
  if (own >= 0) return own;
  const of = data.flatMap(({ source }, i) => (source === asked ? [i] : []));
  return of.length > 1 ? unsure("of a field that is summed up in several ways") : (of[0] ?? fail(REF));
}

/** Items asked for, by field. */
function itemsOf(pivot: Pivot, pairs: readonly (CellValue | undefined)[]): Map<number, string> {
  const asked = new Map<number, string>();
  for (let i = 0; i < pairs.length; i += 2) {
    const [name, item] = [pairs[i], pairs[i + 1]];
    if (item instanceof CellError) fail(item);
    if (item === undefined || item === null) unsure("with a field and no item");
    const field = pivot.fields.findIndex((each) => each.name === String(name).toLowerCase());
    if (field < 0) fail(REF);
    if (![pivot.rows, pivot.columns].some(({ fields }) => fields.includes(field))) unsure("of a field on neither side");
    asked.set(field, String(item).toLowerCase());
  }
  return asked;
}

/** The line of just these items; undefined where there is none. Below its items, a group's subtotal is the later line. */
function lineOf({ fields, lines }: PivotAxis, asked: ReadonlyMap<number, string>, data: number | undefined): number {
  const items = fields.map((field) => asked.get(field));
  while (items.length > 0 && items.at(-1) === undefined) items.pop();
  return lines.findLastIndex(
    (line) =>
      line?.items.length === items.length &&
      line.items.every((item, i) => item !== undefined && item === items[i]) &&
      (data === undefined || line.data === data),
  );
}

export const pivots: readonly WorksheetFunction[] = [
  defineIn(
    "GETPIVOTDATA",
    "text range [any...] [value...]",
    (frame, field, at, ...pairs) => {
      if (!(at instanceof RangeRef)) return unsure("of something that is not a range");
      const pivot = frame.grid.pivotAt(at.sheet, at.top, at.left);
      if (!pivot) return REF;
      if (pivot.strange) return unsure(`of a pivot table ${pivot.strange}`);
      const data = dataOf(pivot, field.toLowerCase());
      const asked = itemsOf(pivot, pairs as CellValue[]);
      // Which data field a line shows is said along one side; the other says 0 throughout.
      const parts = (axis: PivotAxis) => axis.lines.some((line) => line && line.data > 0);
      const row = lineOf(pivot.rows, asked, parts(pivot.rows) ? data : undefined);
      const column = lineOf(pivot.columns, asked, parts(pivot.columns) ? data : undefined);
      if (row < 0 || column < 0)
        return [...asked.keys()].every((i) => itemAt(pivot.fields, i).isText)
          ? REF
          : unsure("of an item that is not found");
      const found = frame.grid.cell(at.sheet, pivot.dataTop + row, pivot.dataLeft + column);
      return found === null ? unsure("of a figure that is blank") : found;
    },
    true,
  ),
];
