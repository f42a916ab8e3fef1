import { entryOf } from "../../units/certain.ts";
import { writePackage } from "../package/zip-write.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { changedCells } from "./changed-cells.ts";
import { spliceSheet } from "./splice-sheet.ts";

export interface Written {
  readonly bytes: Uint8Array;
  readonly changed: number;
}

/** The workbook's bytes after a calculation: the same bytes when no cell changed. */
export function writeWorkbook(workbook: Workbook): Written {
  const replaced = new Map<string, Uint8Array>();
  let changed = 0;
  for (const sheet of workbook.sheets) {
    const xml = workbook.sheetText.get(sheet.part);
    if (xml === undefined) continue;
    const cells = changedCells(sheet);
    if (cells.length === 0) continue;
    changed += cells.length;
    const entry = entryOf({ get: (part) => workbook.package.entry(part) }, sheet.part);
    replaced.set(entry.name, new TextEncoder().encode(spliceSheet(xml, sheet, cells)));
  }
  const { bytes, entries } = workbook.package;
  return { bytes: changed === 0 ? bytes : writePackage(bytes, entries, replaced), changed };
}
