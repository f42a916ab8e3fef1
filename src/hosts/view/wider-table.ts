/**
 * A table grows by the column right of it when somebody types a heading there, and loses its last column when the heading
 * of an empty one is taken away, as an edit that is taken back does. Not where cells are in the way.
 */

import type { FixOffer } from "../../job/fix-cells.ts";
import { escapeXml } from "../../job/xlsx/xml.ts";
import type { Table } from "../../sheet/evaluate/table.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import { itemAt, missing } from "../../units/certain.ts";
import type { TypedCell } from "./edited-bytes.ts";
import { type GrownTable, withArea } from "./grown-table.ts";
import type { SheetPlace } from "./protocol.ts";

/** @param typed with the other cells that are typed at once. Undefined where no table changes. */
export function widerTable(
  workbook: Workbook,
  { sheet, row, column, value }: TypedCell,
  typed: readonly TypedCell[],
): GrownTable | undefined {
  const step = value === null ? -1 : 1;
  const table = workbook.tables.find(
    (one) => one.sheet === sheet && one.top === row && one.right + (step > 0 ? 1 : 0) === column,
  );
  if (table?.headerRows !== 1 || table.totalsRows > 0) return undefined;
  // A heading is text, and no other column's.
  const isHeading =
    typeof value === "string" && !table.columns.some((each) => each.toLowerCase() === value.toLowerCase());
  if (step > 0 && !isHeading) return undefined;
  if (step > 0 ? !isFree(workbook, table, column, row) : !isFree(workbook, table, column, row + 1, typed))
    return undefined;
  return withArea(workbook, table, { ...table, right: table.right + step }, (xml) => {
    const count = xml.replace(
      /(tableColumns\b[^>]*\bcount=")\d+/,
      (_, before) => `${before}${table.columns.length + step}`,
    );
    const end = count.search(/<\/(?:\w+:)?tableColumns>/);
    const prefix = itemAt(/^<\/((?:\w+:)?)/.exec(count.slice(end)) ?? missing(), 1);
    if (step < 0) return count.slice(0, count.lastIndexOf(`<${prefix}tableColumn `, end)) + count.slice(end);
    const ids = [...count.matchAll(/tableColumn [^>]*?\bid="(\d+)"/g)].map(([, id]) => Number(id));
    const added = `<${prefix}tableColumn id="${Math.max(...ids) + 1}" name="${escapeXml(String(value))}"/>`;
    return count.slice(0, end) + added + count.slice(end);
  });
}

/** Nothing stands in the column, from a row of the table to its end, with what is typed. */
function isFree(
  { sheets }: Workbook,
  { sheet, bottom }: Table,
  column: number,
  from: number,
  typed: readonly TypedCell[] = [],
): boolean {
  const { values, owners } = itemAt(sheets, sheet);
  const isBlank = (row: number) => {
    const now = typed.find((cell) => cell.sheet === sheet && cell.row === row && cell.column === column);
    return (now ? now.value : (values[column]?.[row] ?? null)) === null && !owners[column]?.[row];
  };
  for (let row = from; row <= bottom; row++) if (!isBlank(row)) return false;
  return true;
}

/** A fix whose columns the bill has not adds them, where its table can take them. */
export function withColumns(workbook: Workbook, offer: FixOffer, { sheet, row }: SheetPlace): FixOffer {
  const { lacks, cells, says } = offer;
  const headings = cells.filter((cell) => cell.row === row).sort((a, b) => a.column - b.column);
  const [first] = headings;
  const table = workbook.tables.find(
    (one) => one.sheet === sheet && one.top === row && one.right + 1 === first?.column,
  );
  if (lacks.length === 0 || !table || !headings.every(({ column }) => isFree(workbook, table, column, row)))
    return offer;
  const columns = `${lacks.length === 1 ? "column" : "columns"} ${lacks.join(" and ")}`;
  return { ...offer, lacks: [], says: `Add the ${columns}, ${says.charAt(0).toLowerCase()}${says.slice(1)}` };
}
