/** The tables of the sheet Shop of a new workbook: those of another workbook, or an example of each to be typed over. */
import * as invented from "../../cells/example/invented-shop.ts";
import { isMaterials } from "../../cells/tables/recognized.ts";
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { type Book, withoutError } from "../book.ts";
import { type ShopArgument, TABLE_NAMES } from "../building/bill-arguments.ts";
import { findTable, findTableWhere } from "../find-table.ts";
import type { ShopSheetTable } from "../job-sheets/contents.ts";
import { NONE_FINISHED } from "../job-sheets/finished-sheet.ts";

const MATERIALS = { name: "Materials", title: "Materials of our own, laid over the built-in ones" };
const TITLES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(invented.SHOP_TABLES.map(({ name, title }) => [name, title])),
  Outlines: "Outlines of drawn tools",
  Press: "Travels of the press that is drawn",
};

/** Wherever they stand in the book, and whatever they are called there. */
export function shopTablesOf(book: Book): ShopSheetTable[] {
  const found = (Object.keys(TABLE_NAMES) as ShopArgument[]).flatMap((key) => {
    const table = findTable(book, key);
    const name = TABLE_NAMES[key];
    return table
      ? [asTable(name, TITLES[name] ?? name, key === "calendar" ? readable(table.matrix) : table.matrix)]
      : [];
  });
  const materials = findTableWhere(book, isMaterials);
  const finished = findTable(book, "finished");
  return [
    ...found,
    ...(materials ? [asTable(MATERIALS.name, MATERIALS.title, materials.matrix)] : []),
    ...(finished ? [asTable(NONE_FINISHED.name, NONE_FINISHED.title, finished.matrix)] : []),
  ];
}

function asTable(name: string, title: string, [header = [], ...rows]: CellMatrix): ShopSheetTable {
  const headers = header.map(String);
  return { name, title, headers, rows: rows.map((row) => headers.map((_, i) => withoutError(row[i]))) };
}

/** Days and times as they are read aloud: a workbook holds them as numbers. */
function readable([header = [], ...rows]: CellMatrix): CellMatrix {
  const asText = (cell: CellValue): CellValue =>
    typeof cell !== "number" ? cell : cell < 1 ? clock(cell) : isoDay(cell);
  return [header, ...rows.map((row) => row.map(asText))];
}

const MINUTES_A_DAY = 24 * 60;
function clock(share: number): string {
  const minutes = Math.round(share * MINUTES_A_DAY);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
}
/** Day 25569 of a worksheet is 1970-01-01. */
const isoDay = (serial: number): string =>
  new Date((Math.floor(serial) - 25_569) * 86_400_000).toISOString().slice(0, 10);

/** Said in a column of its own in every row: it goes when the shop's own figures are typed. */
const MARK = { header: "Example", cell: "example, not your shop" };
/** Of what every shop has its own of, one row; kinds of work, rates and days stand as a whole. */
const ONE_ROW: Readonly<Record<string, string>> = {
  Brakes: "Brake 1",
  Dies: "V 1",
  Punches: "Plain",
  Shears: "Shear 1",
  Waterjets: "Jet 1",
  Stock: "Sheet 11 ga",
};
export const EXAMPLE_MATERIAL = "A1011 CS";

/** Every table with its headings and invented figures that are marked as such. */
export const exampleShop = (): ShopSheetTable[] =>
  invented.SHOP_TABLES.map(({ name, title, headers, rows }) => ({
    name,
    title,
    headers: [...headers, MARK.header],
    rows: rows
      .filter(([first, , , station]) =>
        name === "Calendar"
          ? isBlank(station) && !/\d/.test(String(first))
          : ONE_ROW[name] === undefined || first === ONE_ROW[name],
      )
      .map((row) => [...row, MARK.cell]),
  }));

/** The tables as they would stand in a workbook. */
export const bookOfTables = (tables: readonly ShopSheetTable[]): Book => [
  {
    name: "Shop",
    rows: tables.flatMap(({ headers, rows }): CellMatrix => [[...headers], ...rows.map((row) => [...row]), []]),
  },
];
