/** Why a cell cannot be typed over; undefined where it can. */
import { cellName } from "../../sheet/formula/address.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { SheetPlace } from "./protocol.ts";

export function lockedBy({ sheets, tables }: Workbook, { sheet, row, column }: SheetPlace): string | undefined {
  const at = sheets[sheet];
  if (!at || at.part === "") return "this sheet has no cells";
  const owner = at.owners[column]?.[row];
  if (owner)
    return owner.row === row && owner.column === column
      ? "it holds a formula; edit it in Excel"
      : `it is filled by the formula in ${cellName(owner.row, owner.column)}`;
  const table = tables.find(
    ({ sheet: on, top, left, right }) => on === sheet && row === top && column >= left && column <= right,
  );
  return table ? `it is the header of the table ${table.name}` : undefined;
}
