import type { Book } from "./book.ts";

/**
 * The shape of a job's workbook: its sheets, its tables and the arguments of its formulas. It grows with every release
 * that changes one of them; `shop upgrade` brings an earlier workbook to this one.
 */
export const SCHEMA = 2;
/** Workbooks of release 0.1 name none. */
const FIRST_SCHEMA = 1;
/** Beside this label, in the first sheet, stands its number. */
export const SCHEMA_LABEL = "Schema";

/** The number beside its label; a workbook without one is of the first. */
export function schemaOf(book: Book): number {
  for (const { rows } of book)
    for (const row of rows) {
      const at = row.indexOf(SCHEMA_LABEL);
      const number = at < 0 ? undefined : row[at + 1];
      if (typeof number === "number") return number;
    }
  return FIRST_SCHEMA;
}
