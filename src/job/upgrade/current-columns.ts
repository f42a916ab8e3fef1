/** A table of the shop with the headings of this release: old words replaced, columns of a later date added blank. */
import * as invented from "../../cells/example/invented-shop.ts";
import type { Columns } from "../../cells/parameters/read-table.ts";
import { foldHeader } from "../../cells/tables/recognized.ts";
import { BRAKE_COLUMNS, DIE_COLUMNS, PUNCH_COLUMNS, SHEAR_COLUMNS } from "../../cells/tables/shop-tables.ts";
import type { CellValue } from "../../units/cell.ts";
import type { ShopSheetTable } from "../job-sheets/contents.ts";

const COLUMNS: Readonly<Record<string, Columns>> = {
  Brakes: BRAKE_COLUMNS,
  Dies: DIE_COLUMNS,
  Punches: PUNCH_COLUMNS,
  Shears: SHEAR_COLUMNS,
};
const UNIT = /\s*(\([^)]*\))\s*$/;

/** @param changes what is done, a sentence each, is added here. */
export function currentColumns(table: ShopSheetTable, changes: string[]): ShopSheetTable {
  const columns = Object.values(COLUMNS[table.name] ?? {});
  const headers = table.headers.map((title) => {
    const column = columns.find((each) => each.headers.some((word) => foldHeader(word) === foldHeader(title)));
    const [, unit] = UNIT.exec(title) ?? [];
    // The name of a machine or a tool may be called by either word.
    if (!column || column.kind === "text" || foldHeader(column.headers[0]) === foldHeader(title)) return title;
    const now = unit ? `${column.headers[0]} ${unit}` : column.headers[0];
    changes.push(`table ${table.name}: column "${title}" is now "${now}"`);
    return now;
  });
  const usual = invented.SHOP_TABLES.find(({ name }) => name === table.name)?.headers ?? [];
  const known = new Set(headers.map(foldHeader));
  const added = usual.filter((title) => !known.has(foldHeader(title)) && !isOtherWord(title, headers, columns));
  for (const title of added) changes.push(`table ${table.name}: column "${title}" is new, blank`);
  return {
    ...table,
    headers: [...headers, ...added],
    rows: table.rows.map((row): CellValue[] => [...row, ...added.map(() => null)]),
  };
}

const isOtherWord = (title: string, headers: readonly string[], columns: Columns[string][]): boolean =>
  columns.some(
    ({ headers: words }) =>
      words.some((word) => foldHeader(word) === foldHeader(title)) &&
      headers.some((header) => words.some((word) => foldHeader(word) === foldHeader(header))),
  );
