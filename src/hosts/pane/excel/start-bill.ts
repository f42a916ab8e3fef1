/** Adds the sheets a bill needs, their headers from the functions' own columns. No sheet that is there is touched. */

import type { Columns } from "../../../cells/parameters/read-table.ts";
import { BILL_COLUMNS } from "../../../cells/tables/bill-columns.ts";
import { BRAKE_COLUMNS, DIE_COLUMNS, PUNCH_COLUMNS, SHEAR_COLUMNS } from "../../../cells/tables/shop-tables.ts";
import type { Task } from "./task.ts";

const PARTS = "Parts";
const SHOP = "Shop";
/** Inches, as the functions take plain numbers. */
const UNITS: Readonly<Record<string, string>> = {
  length: "in",
  lengths: "in",
  force: "US ton",
  angle: "deg",
  angles: "deg",
  lineLoad: "US ton/ft",
  feed: "in/min",
};
/** A bill to begin with; the other columns may be added by their names. */
const BILL_START = [
  "part",
  "material",
  "thickness",
  "quantity",
  "width",
  "flanges",
  "bendAngles",
  "grain",
  "die",
  "punch",
];
/** 3/16 typed into a plain cell becomes a day in March. */
const TEXT_COLUMNS = ["thickness", "flanges", "bendAngles"];

const header = (columns: Columns, keys = Object.keys(columns)): string[] =>
  keys.map((key) => {
    const { headers, kind } = columns[key]!;
    const unit = UNITS[kind];
    return unit ? `${headers[0]} (${unit})` : headers[0]!;
  });

const SHOP_TABLES: readonly (readonly [title: string, columns: Columns])[] = [
  ["Press brakes, from their plates", BRAKE_COLUMNS],
  ["Dies", DIE_COLUMNS],
  ["Punches", PUNCH_COLUMNS],
  ["Shears", SHEAR_COLUMNS],
];
const ROWS_BETWEEN = 10; // room to type a table's rows

export async function startBill(task: Task): Promise<string> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    const taken = worksheets.items.map(({ name }) => name.toLowerCase());
    const wanted = [PARTS, SHOP].filter((name) => !taken.includes(name.toLowerCase()));
    if (wanted.length === 0) return `The sheets ${PARTS} and ${SHOP} are here already; nothing was changed.`;
    for (const name of wanted) {
      task.step(`Adding ${name}`);
      const sheet = worksheets.add(name);
      if (name === PARTS) fillParts(sheet);
      else fillShop(sheet);
      await context.sync();
    }
    return `Added ${wanted.join(" and ")}. Type the shop's tools from their plates, then one part a row.`;
  });
}

function write(sheet: Excel.Worksheet, row: number, cells: readonly string[], bold: boolean): void {
  const range = sheet.getRangeByIndexes(row, 0, 1, cells.length);
  range.values = [[...cells]];
  range.format.font.bold = bold;
}

function fillParts(sheet: Excel.Worksheet): void {
  write(sheet, 0, ["Parts: one a row; plain numbers are inches; lists as 2; 3.5; 2"], false);
  write(sheet, 1, header(BILL_COLUMNS, BILL_START), true);
  for (const key of TEXT_COLUMNS) {
    const below = sheet.getRangeByIndexes(2, BILL_START.indexOf(key), 200, 1);
    below.numberFormat = Array.from({ length: 200 }, () => ["@"]);
  }
}

function fillShop(sheet: Excel.Worksheet): void {
  SHOP_TABLES.forEach(([title, columns], i) => {
    write(sheet, i * ROWS_BETWEEN, [title], true);
    write(sheet, i * ROWS_BETWEEN + 1, header(columns), true);
  });
}
