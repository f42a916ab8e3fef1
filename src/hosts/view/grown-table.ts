/**
 * A table grows by the row below it when somebody types there, as sheets do: what reads the table reads the new row too.
 * Not where the next row is taken, the table has a row of totals, or its columns are calculated: those are Excel's to fill.
 */
import { columnLetters } from "../../sheet/formula/address.ts";
import { readTable } from "../../sheet/workbook/read-table.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { Place } from "./protocol.ts";

export interface GrownTable {
  /** The table's part of the package, and its new text. */
  readonly part: string;
  readonly xml: string;
}

/** Undefined where nothing grows. */
export function grownTable(workbook: Workbook, { sheet: index, row, column }: Place): GrownTable | undefined {
  const sheet = workbook.sheets[index];
  const table = workbook.tables.find(
    (one) => one.sheet === index && one.bottom + 1 === row && one.left <= column && column <= one.right,
  );
  if (!sheet || !table || table.totalsRows > 0) return undefined;
  for (let at = table.left; at <= table.right; at++) {
    if ((sheet.values[at]?.[row] ?? null) !== null) return undefined;
    if (sheet.owners[at]?.[table.bottom]) return undefined;
  }
  const relation = workbook.package
    .relationships(sheet.part)
    .find(
      ({ type, target }) =>
        type === "table" && readTable(workbook.package.text(target) ?? "", index)?.name === table.name,
    );
  const xml = relation && workbook.package.text(relation.target);
  if (!xml) return undefined;
  const area = (bottom: number) =>
    `${columnLetters(table.left)}${table.top + 1}:${columnLetters(table.right)}${bottom + 1}`;
  // The table's own place and that of its filter.
  const grown = xml.replace(/\bref=(["'])([^"']*)\1/g, (whole, quote: string, ref: string) =>
    ref.replaceAll("$", "") === area(table.bottom) ? `ref=${quote}${area(table.bottom + 1)}${quote}` : whole,
  );
  return grown === xml ? undefined : { part: relation.target, xml: grown };
}
