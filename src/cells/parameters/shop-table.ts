/** A table of the shop as a parameter of a function: a range with a header row, read once a call. */
import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";
import { type Columns, type Row, readTable } from "./read-table.ts";

const columnsInWords = (columns: Columns): string =>
  Object.values(columns)
    .map(({ headers: [first], optional }) => (optional === true ? `[${first}]` : first))
    .join(", ");

export const isEmptyRange = (given: CellMatrix): boolean => given.every((row) => row.every(isBlank));

type Convert<C extends Columns, T> = (row: Row<C>, name: string, context: ReadContext) => T;

/** At least one row. */
export function shopTable<C extends Columns, T>(
  type: string,
  description: string,
  columns: C,
  convert: Convert<C, T>,
): TableParameter<T[]> {
  return {
    ...anyTable(type, description, columns, convert),
    read: (given: CellMatrix, name, context) => {
      if (isEmptyRange(given)) throw wrong(name, "given", null);
      const rows = readTable(given, columns, name, context.system).map((row) => convert(row, name, context));
      if (rows.length === 0) throw wrong(name, "a range with at least one row below its header", null);
      return rows;
    },
  };
}

/** A blank stands for a shop without it; `optional` where the argument may be left out. */
export function anyTable<C extends Columns, T>(
  type: string,
  description: string,
  columns: C,
  convert: Convert<C, T>,
  optional = false,
): TableParameter<T[]> {
  return {
    shape: "table",
    type,
    description: `${description}: a range with a header row (${columnsInWords(columns)}), units in brackets in the header`,
    optional,
    default: null,
    read: (given: CellMatrix, name, context) =>
      isEmptyRange(given)
        ? []
        : readTable(given, columns, name, context.system).map((row) => convert(row, name, context)),
  };
}
