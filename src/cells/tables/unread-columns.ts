import { type CellMatrix, isBlank, isCellError } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { showGiven } from "../../units/show.ts";
import { type Columns, findColumn } from "../parameters/column.ts";

/** Headers that are no column of a table, each with the nearest that is: a misspelt one would leave its figures out unseen. */
export function unreadColumns([header = []]: CellMatrix, table: Columns): string[] {
  const columns = Object.values(table);
  const read = columns.map((column) => findColumn(header, { ...column, optional: true }, "table").index);
  const names = columns.map(({ headers }) => headers[0]);
  return header.flatMap((title, i) => {
    if (isBlank(title) || read.includes(i)) return [];
    const words = isCellError(title) ? title.code : String(title);
    const begun = names.find((name) => name.toLowerCase().startsWith(words.toLowerCase()));
    const near = begun ?? nearest(words, names);
    return [`column ${showGiven(words)} is not read; the nearest that is: "${near}"`];
  });
}
