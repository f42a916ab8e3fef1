import type { CellMatrix } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { findColumn } from "../parameters/column.ts";
import { BILL_COLUMNS } from "./bill-columns.ts";
import { MARK_COLUMNS } from "./marks.ts";

/** Headers that are no column of a bill, each with the nearest that is: a misspelt one would leave its work out unseen. */
export function unreadColumns([header = []]: CellMatrix): string[] {
  const columns = Object.values({ ...BILL_COLUMNS, ...MARK_COLUMNS });
  const read = columns.map((column) => findColumn(header, { ...column, optional: true }, "bill").index);
  const names = columns.map(({ headers }) => headers[0]);
  return header.flatMap((title, i) =>
    title === null || read.includes(i)
      ? []
      : [`column "${String(title)}" is not read; the nearest that is: "${nearest(String(title), names)}"`],
  );
}
