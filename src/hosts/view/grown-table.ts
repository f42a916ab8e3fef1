/**
 * A table grows by the row below it when somebody types there, as sheets do: what reads the table reads the new row too.
 * Not where the next row is taken, the table has a row of totals, or its columns are calculated: those are Excel's to fill.
 */

import type { Table } from "../../sheet/evaluate/table.ts";
import { columnLetters } from "../../sheet/formula/address.ts";
import { readTable } from "../../sheet/workbook/read-table.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { itemAt } from "../../units/certain.ts";
import type { SheetPlace } from "./protocol.ts";

export interface GrownTable {
  /** The table's part of the package, and its new text. */
  readonly part: string;
  readonly xml: string;
}

/** By the rows that are typed without a gap, the first at `place`. Undefined where nothing grows. */
export function grownTable(
  workbook: Workbook,
  { sheet: index, row, column }: SheetPlace,
  typed: readonly SheetPlace[] = [],
): GrownTable | undefined {
  const sheet = workbook.sheets[index];
  const table = workbook.tables.find(
    (one) => one.sheet === index && one.bottom + 1 === row && one.left <= column && column <= one.right,
  );
  if (!sheet || !table || table.totalsRows > 0) return undefined;
  const isFree = (below: number) => {
    for (let at = table.left; at <= table.right; at++)
      if ((sheet.values[at]?.[below] ?? null) !== null || sheet.owners[at]?.[below]) return false;
    return true;
  };
  for (let at = table.left; at <= table.right; at++) if (sheet.owners[at]?.[table.bottom]) return undefined;
  if (!isFree(row)) return undefined;
  const rows = new Set(typed.filter((cell) => cell.sheet === index).map((cell) => cell.row));
  let bottom = row;
  while (rows.has(bottom + 1) && isFree(bottom + 1)) bottom++;
  return withArea(workbook, table, { ...table, bottom });
}

/** The part of a table that takes another area: its own place and that of its filter; undefined where nothing changes. */
export function withArea(
  { package: file, sheets }: Workbook,
  table: Table,
  area: Table,
  change: (xml: string) => string = (xml) => xml,
): GrownTable | undefined {
  const relation = file
    .relationships(itemAt(sheets, table.sheet).part)
    .find(
      ({ type, target }) => type === "table" && readTable(file.text(target) ?? "", table.sheet)?.name === table.name,
    );
  const xml = relation && file.text(relation.target);
  if (!xml) return undefined;
  const grown = xml.replace(/\bref=(["'])([^"']*)\1/g, (whole, quote: string, ref: string) =>
    ref.replaceAll("$", "") === areaOf(table) ? `ref=${quote}${areaOf(area)}${quote}` : whole,
  );
  return grown === xml ? undefined : { part: relation.target, xml: change(grown) };
}

const areaOf = ({ left, top, right, bottom }: Table): string =>
  `${columnLetters(left)}${top + 1}:${columnLetters(right)}${bottom + 1}`;
