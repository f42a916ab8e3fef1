/** What an argument as text stands for: a figure, a word, or the cells it names. */
import { parseCell } from "../../../sheet/formula/address.ts";
import type { CellMatrix, CellValue } from "../../../units/cell.ts";
import { asCell } from "./read-book.ts";

const REFERENCE = /^(?:(?:'((?:[^']|'')+)'|(\w+))!)?\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i;

/** Undefined where Excel itself must work it out: a formula, a name, a table. */
export async function argumentValue(
  context: Excel.RequestContext,
  own: Excel.Worksheet,
  text: string,
): Promise<CellValue | CellMatrix | undefined> {
  if (text === "") return null;
  if (/^[-+]?(?:\d+\.?\d*|\.\d+)(?:E[-+]?\d+)?$/i.test(text)) return Number(text);
  if (/^"(?:[^"]|"")*"$/.test(text)) return text.slice(1, -1).replaceAll('""', '"');
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === "true";
  const [, quoted, plain, column, row, lastColumn = column, lastRow = row] = REFERENCE.exec(text) ?? [];
  const first = parseCell(`${column}${row}`.toUpperCase());
  const last = parseCell(`${lastColumn}${lastRow}`.toUpperCase());
  if (!column || !first || !last) return undefined;
  const sheet = await sheetNamed(context, own, quoted?.replaceAll("''", "'") ?? plain);
  if (!sheet) return undefined;
  const [rows, columns] = [last.row - first.row + 1, last.column - first.column + 1];
  if (rows < 1 || columns < 1) return undefined;
  const range = sheet.getRangeByIndexes(first.row, first.column, rows, columns);
  range.load("values");
  await context.sync();
  return range.values.map((cells: unknown[]) => cells.map(asCell));
}

async function sheetNamed(
  context: Excel.RequestContext,
  own: Excel.Worksheet,
  name: string | undefined,
): Promise<Excel.Worksheet | undefined> {
  if (name === undefined) return own;
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  return worksheets.items.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
}
