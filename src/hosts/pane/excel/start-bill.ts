/**
 * Adds the sheets of a job to the open workbook: the same sheets, tables and formulas as `shop start` writes, with the
 * parts of a list where one is chosen. No sheet that is there is touched.
 */

import { calledTyped } from "../../../job/building/formulas.ts";
import { shopOf } from "../../../job/job-plan.ts";
import { jobWorkbook } from "../../../job/job-sheets/job-workbook.ts";
import { rowsOfFile } from "../../../job/part-list/list-file.ts";
import { faultWords, mapWords } from "../../../job/part-list/list-words.ts";
import { type PartList, readPartList } from "../../../job/part-list/part-list.ts";
import { bookOfTables, exampleShop } from "../../../job/start/shop-tables.ts";
import { startedContents } from "../../../job/start/started.ts";
import type { SheetCell, SheetModel } from "../../../job/xlsx/model.ts";
import type { StyleName } from "../../../job/xlsx/styles.ts";
import type { CellValue } from "../../../units/cell.ts";
import { itemAt, missing } from "../../../units/certain.ts";
import { readBook } from "./read-book.ts";
import type { Task } from "./task.ts";

/** A part list as a file that the person has chosen. */
interface ListFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Formulas point at the tables of these four: they are added where all of them are ours. */
const TABLES = ["Shop", "Parts", "Job", "Finished"];
/** Sheets that a job needs to be planned at all. */
const NEEDED = ["Parts", "Shop"];

/** @param today day of the worksheet. Throws Refusal for a list that cannot be read. */
export async function startBill(task: Task, file: ListFile | undefined, today: number): Promise<string> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name");
    await context.sync();
    const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
    const isFree = (name: string): boolean => !taken.has(name.toLowerCase());
    if (!NEEDED.some(isFree)) return `The sheets ${NEEDED.join(" and ")} are here already; nothing was changed.`;
    const tables = exampleShop();
    // A shop that is here already says what plain numbers mean, and which materials there are.
    const shop = shopOf(isFree("Shop") ? bookOfTables(tables) : await readBook(context));
    const list = file && readPartList(rowsOfFile(file.bytes).rows, {}, shop.context);
    const facts = {
      name: file ? file.name.replace(/\.[^.]*$/, "") : "Job",
      today,
      partsFile: file?.name,
      shopFile: undefined,
    };
    const { sheets } = jobWorkbook(startedContents(facts, tables, shop, list));
    const all = TABLES.every(isFree);
    const wanted = sheets.filter(({ name }) => isFree(name) && (all || NEEDED.includes(name)));
    // Tables first: a formula that names none is refused as it is typed.
    for (const model of [...wanted].sort((a, b) => rank(a) - rank(b))) {
      task.step(`Adding ${model.name}`);
      write(worksheets.add(model.name), model);
      await context.sync();
    }
    return [`Added ${wanted.map(({ name }) => name).join(", ")}.`, ...(list ? said(list) : [NEXT])].join("\n");
  });
}

const NEXT = "Type the shop's tools over the examples, from their plates, then one part a row.";
const said = (list: PartList): string[] => [
  `${list.lines} lines read.`,
  ...mapWords(list, false),
  ...faultWords(list.faults),
];
const rank = ({ name }: SheetModel): number => (TABLES.includes(name) ? 0 : 1);

const BOLD: readonly StyleName[] = ["title", "heading", "header", "headerRight", "label"];
const DAYS: Partial<Record<StyleName, string>> = {
  inputDay: "yyyy-mm-dd",
  inputMoment: "yyyy-mm-dd hh:mm",
  dayLeft: "yyyy-mm-dd",
};
const TEXT_ROWS = 200; // below the parts there are: 3/16 typed into a plain cell becomes a day in March

function write(sheet: Excel.Worksheet, { cells, tables = [], columnStyles = [] }: SheetModel): void {
  const at = ({ row, column }: SheetCell) => sheet.getRangeByIndexes(row - 1, column - 1, 1, 1);
  const [held, formulas] = [
    cells.filter(({ formula }) => formula === undefined),
    cells.filter(({ formula }) => formula !== undefined),
  ];
  const rows = Math.max(1, ...held.map(({ row }) => row));
  const columns = Math.max(1, ...held.map(({ column }) => column));
  columnStyles.forEach((style, column) => {
    if (style !== "textColumn") return;
    const below = sheet.getRangeByIndexes(rows, column, TEXT_ROWS, 1);
    below.numberFormat = Array.from({ length: TEXT_ROWS }, () => ["@"]);
  });
  const values: (string | number | boolean)[][] = Array.from({ length: rows }, () =>
    Array.from({ length: columns }, () => ""),
  );
  for (const { row, column, value } of held) itemAt(values, row - 1)[column - 1] = asTyped(value ?? null);
  sheet.getRangeByIndexes(0, 0, rows, columns).values = values;
  for (const cell of cells) {
    if (cell.style && BOLD.includes(cell.style)) at(cell).format.font.bold = true;
    const day = cell.style && DAYS[cell.style];
    if (day) at(cell).numberFormat = [[day]];
  }
  for (const { name, row, column, headers, rows: length } of tables)
    sheet.tables.add(sheet.getRangeByIndexes(row - 1, column - 1, length + 1, headers.length), true).name = name;
  for (const cell of formulas) at(cell).formulas = [[calledTyped(cell.formula ?? missing())]];
}

/** Excel takes text for what it looks like, 1/4 for a day, unless an apostrophe says text. */
const asTyped = (value: CellValue): string | number | boolean =>
  typeof value === "number" || typeof value === "boolean"
    ? value
    : value === null || typeof value === "object" || value === ""
      ? ""
      : `'${value}`;
