/** A bill from a CSV file as the cells of a worksheet would hold it. */

import { findColumn } from "../../cells/parameters/column.ts";
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { readCsv } from "./csv.ts";
import { checkListSize } from "./part-list-limits.ts";

/** Not "1,234", which could be either. */
const DECIMAL_COMMA = /^[-+]?(?!\d{1,3},\d{3}$)\d+,\d+$/;
const THOUSANDS = /^([-+]?)([1-9]\d{0,2}(?:\.\d{3})+)(?:,(\d+))?$/;

/**
 * Where a file does not separate by commas and writes decimals with them, a point between groups of three digits parts
 * thousands: "1.250" is 1250 there. Only in columns of figures, and only in such files.
 */
export function partsOf(bytes: Uint8Array): CellMatrix {
  const { rows, separator } = readCsv(bytes);
  checkListSize(rows);
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const header = rows[0] ?? [];
  const figures = Object.values(BILL_COLUMNS)
    .filter(({ kind }) => kind !== "text")
    .map((column) => findColumn(header, { ...column, optional: true }, "parts").index)
    .filter((index) => index >= 0);
  const body = rows.slice(1);
  const commaDecimals =
    separator !== "," && figures.some((i) => body.some((row) => DECIMAL_COMMA.test((row[i] ?? "").trim())));
  const read = (text: string, index: number): string => {
    const match = commaDecimals && figures.includes(index) ? THOUSANDS.exec(text.trim()) : null;
    if (!match) return text;
    const [, sign = "", whole = "", decimals] = match;
    return `${sign}${whole.replaceAll(".", "")}${decimals ? `.${decimals}` : ""}`;
  };
  const cells = rows.map((row, r) =>
    Array.from({ length: width }, (_, i) => {
      const text = row[i] ?? "";
      return text.trim() === "" ? null : r === 0 ? text : read(text, i);
    }),
  );
  return withQuantity(cells, header);
}

/** A part list without quantities can be checked all the same: no verdict asks how many. */
function withQuantity(cells: CellMatrix, header: readonly string[]): CellMatrix {
  if (findColumn(header, { ...BILL_COLUMNS.quantity, optional: true }, "parts").index >= 0) return cells;
  const isEmpty = (row: CellMatrix[number]) => row.every((cell) => cell === null);
  return cells.map((row, r) => [...row, r === 0 ? BILL_COLUMNS.quantity.headers[0] : isEmpty(row) ? null : 1]);
}
