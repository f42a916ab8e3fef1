/**
 * The workbook's bytes with the cells that were typed over and the answers that followed. Everything else is copied:
 * styles, charts, macros and whatever else the file holds. The same bytes when nothing differs.
 */

import { writePackage } from "../../sheet/package/zip-write.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { type ChangedCell, changedCells } from "../../sheet/write/changed-cells.ts";
import { spliceSheet } from "../../sheet/write/splice-sheet.ts";
import type { CellValue } from "../../units/cell.ts";
import { missing } from "../../units/certain.ts";
import type { GrownTable } from "./grown-table.ts";
import type { SheetPlace } from "./protocol.ts";

export interface TypedCell extends SheetPlace {
  readonly value: CellValue;
}

export function editedBytes(workbook: Workbook, typed: readonly TypedCell[], grown?: GrownTable): Uint8Array {
  const replaced = new Map<string, Uint8Array>();
  if (grown) replaced.set((workbook.package.entry(grown.part) ?? missing()).name, new TextEncoder().encode(grown.xml));
  for (const sheet of workbook.sheets) {
    const xml = workbook.sheetText.get(sheet.part);
    if (xml === undefined) continue;
    const cells = [...typed.filter((cell) => cell.sheet === sheet.index).map(asChanged), ...changedCells(sheet)];
    if (cells.length === 0) continue;
    cells.sort((a, b) => a.row - b.row || a.column - b.column);
    const entry = workbook.package.entry(sheet.part) ?? missing();
    replaced.set(entry.name, new TextEncoder().encode(spliceSheet(xml, sheet, cells)));
  }
  const { bytes, entries } = workbook.package;
  return replaced.size === 0 ? bytes : writePackage(bytes, entries, replaced);
}

const asChanged = ({ row, column, value }: TypedCell): ChangedCell => ({
  row,
  column,
  value: value ?? undefined,
  ref: undefined,
});
