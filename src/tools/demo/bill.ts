/** Reads the bill's lines out of a calculated workbook, by the headers of its sheet Answers. */
import type { Sheet } from "../../sheet/workbook/sheet.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";

export const WANTED = {
  part: "Part",
  quantity: "Quantity",
  material: "Material",
  thickness: "Thickness",
  flat: "Flat length (in)",
  weight: "Weight, all (lb)",
  die: "Die",
  radius: "Inside radius (in)",
  tons: "Force (US ton)",
  status: "Status",
  sentence: "What the checks say",
} as const;

export type BillLine = Readonly<Record<keyof typeof WANTED, CellValue>>;

/** Throws when the sheet or one of its columns is missing. */
export function readBill({ sheets }: Workbook): BillLine[] {
  const sheet = sheets.find(({ name }) => name === "Answers");
  if (!sheet) throw new Error('workbook must have a sheet "Answers"; got none');
  const keys = Object.keys(WANTED) as (keyof typeof WANTED)[];
  const header = headerRow(sheet);
  const columns = keys.map((key) => columnOf(sheet, header, WANTED[key]));
  const lines: BillLine[] = [];
  for (let row = header + 1; !isBlank(valueAt(sheet, row, columns[0]!)); row++)
    lines.push(
      Object.fromEntries(keys.map((key, i) => [key, valueAt(sheet, row, columns[i]!)])) as Record<
        keyof typeof WANTED,
        CellValue
      >,
    );
  return lines;
}

const valueAt = (sheet: Sheet, row: number, column: number): CellValue => sheet.values[column]?.[row] ?? null;

function headerRow(sheet: Sheet): number {
  for (let row = 0; row <= sheet.lastRow; row++) if (valueAt(sheet, row, 0) === WANTED.part) return row;
  throw new Error(`sheet Answers must have a header that begins with "${WANTED.part}"; got none`);
}

function columnOf(sheet: Sheet, row: number, title: string): number {
  for (let column = 0; column <= sheet.lastColumn; column++) if (valueAt(sheet, row, column) === title) return column;
  throw new Error(`sheet Answers must have a column "${title}"; got none`);
}
