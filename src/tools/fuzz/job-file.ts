/** A sound job workbook to damage: the invented shop's tables below each other on one sheet, a short bill on another. */
import { SHOP_TABLES } from "../../cells/example/invented-shop.ts";
import { billTitles } from "../../cells/tables/bill-columns.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { BASE_PARTS } from "./base-files.ts";

const JOB: CellMatrix = [
  ["Job", "Entry"],
  ["Job name", "Fuzz"],
  ["Work can begin", "2026-03-02 07:00"],
  ["Must leave by", "2026-03-20 12:00"],
];
const KEYS = [
  ...(["part", "material", "thickness", "quantity", "width"] as const),
  ...(["flanges", "bendAngles", "crossFlanges", "crossAngles"] as const),
];
const BILL: CellMatrix = [
  billTitles(...KEYS, "due"),
  ["L1", "A1011 CS", "11 ga", 20, 6, "2; 3", 90, null, null, null],
  ["Z1", "A1011 CS", "11 ga", 10, 6, "2; 2.5; 2", "90; -90", null, null, null],
  ["T1", "A1011 CS", "12 ga", 6, null, "1.5; 8; 1.5", 90, "1.5; 6; 1.5", 90, null],
  ["P1", "A1011 CS", "10 ga", 12, 6, 8, null, null, null, null],
];

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const escaped = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
const cell = (value: CellValue): string =>
  value === null
    ? "<c/>"
    : typeof value === "number"
      ? `<c><v>${value}</v></c>`
      : `<c t="inlineStr"><is><t>${escaped(String(value))}</t></is></c>`;
const sheet = (rows: CellMatrix): string =>
  `<worksheet xmlns="${MAIN}"><sheetData>${rows.map((row) => `<row>${row.map(cell).join("")}</row>`).join("")}</sheetData></worksheet>`;

const tables = SHOP_TABLES.map(({ headers, rows }): CellMatrix => [headers, ...rows].map((row) => [...row]));

export const JOB_PARTS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(BASE_PARTS).filter(([name]) => !/table|sheet2\.xml\.rels/.test(name))),
  "xl/worksheets/sheet1.xml": sheet(BILL),
  "xl/worksheets/sheet2.xml": sheet([...tables, JOB].flatMap((table) => [...table, [null]])),
};
