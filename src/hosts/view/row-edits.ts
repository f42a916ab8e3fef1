/**
 * A row put into a table or taken out of it, as edits of cells: what stands below moves by one row. So it is taken back
 * like every other edit, and formulas that read the table need no change.
 */

import { cellName } from "../../sheet/formula/address.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { itemAt } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import type { Edit, SheetPlace } from "./protocol.ts";

/** A table is read up to its first empty row: a new one says that it is there. */
const NEW = "NEW";

/** @param typed what would have to be typed for what a cell holds. Throws Refusal outside the rows of a table. */
export function rowEdits(
  { tables, sheets }: Workbook,
  place: SheetPlace,
  change: "insert" | "remove",
  typed: (place: SheetPlace) => string,
): Edit[] {
  const { sheet, row, column } = place;
  const table = tables.find(
    (one) => one.sheet === sheet && one.top < row && row <= one.bottom && one.left <= column && column <= one.right,
  );
  if (!table) throw wrong("row", "one of a table", cellName(row, column), "choose a cell below the table's header");
  const columns = Array.from({ length: table.right - table.left + 1 }, (_, i) => table.left + i);
  const calculated = columns.find((at) => itemAt(sheets, sheet).owners[at]?.[row]);
  if (calculated !== undefined)
    throw wrong("row", "one that is typed, not calculated", cellName(row, calculated), "change it in Excel");
  const last = lastFilled(table.bottom, (at) => columns.some((c) => typed({ sheet, row: at, column: c }) !== ""));
  const [from, to] = change === "insert" ? [row, last + 1] : [row, last];
  const step = change === "insert" ? -1 : 1;
  const edits: Edit[] = [];
  for (let at = from; at <= to; at++)
    for (const c of columns) {
      const there = { sheet, row: at, column: c };
      const isNew = change === "insert" && at === row;
      const isGone = change === "remove" && at === to;
      const value = isNew ? (c === table.left ? NEW : "") : isGone ? "" : typed({ ...there, row: at + step });
      if (value !== typed(there)) edits.push({ ...there, typed: value });
    }
  return edits;
}

function lastFilled(bottom: number, isFilled: (row: number) => boolean): number {
  let row = bottom;
  while (row > 0 && !isFilled(row)) row--;
  return row;
}
