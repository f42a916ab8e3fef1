import { type CellMatrix, isBlank, isCellError } from "../../units/cell.ts";
import { nearestIs } from "../../units/nearest.ts";
import { showGiven } from "../../units/show.ts";
import { type Columns, findColumn } from "./column.ts";

/**
 * Headers that match no column of a table, each with the nearest that does: a misspelled one would silently drop its
 * figures.
 */
export function unreadColumns([header = []]: CellMatrix, table: Columns): string[] {
  const columns = Object.values(table);
  const read = columns.map((column) => findColumn(header, { ...column, optional: true }, "table").index);
  const names = columns.map(({ headers }) => headers[0]);
  return header.flatMap((title, i) => {
    if (isBlank(title) || read.includes(i)) return [];
    const words = isCellError(title) ? title.code : String(title);
    const near = nearestIs(words.replace(/\s*[([].*$/s, ""), names);
    return [`column ${showGiven(words)} is not read${near ? `; ${near}` : ""}`];
  });
}
