/** What a job's workbook says of its hours and its price, as its cells stand: which of it an upgrade changes. */
import { foldHeader } from "../../cells/tables/recognized.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import type { Book } from "../book.ts";

const MINUTES = 60; // of an hour, by definition

/** "price: 22720.30 -> 23104.15", "hours at Brake: 12.3 -> 12.9"; none where both books say the same. */
export function figureChanges(before: Book, after: Book): string[] {
  const [was, is] = [figuresOf(before), figuresOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((what) => {
    const [old = "none", now = "none"] = [was.get(what), is.get(what)];
    return old === now ? [] : [`${what}: ${old} -> ${now}`];
  });
}

function figuresOf(book: Book): Map<string, string> {
  const figures = new Map<string, string>();
  const total = rowsUnder(book, ["Part", "Unit price", "Price"]).find(([part]) => part === "Total")?.[2];
  if (typeof total === "number") figures.set("price", total.toFixed(2));
  const hours = new Map<string, number>();
  for (const [, station, minutes] of rowsUnder(book, ["Part", "Station", "Total"]))
    if (typeof minutes === "number" && !isBlank(station))
      hours.set(String(station), (hours.get(String(station)) ?? 0) + minutes / MINUTES);
  for (const [station, sum] of hours) figures.set(`hours at ${station}`, sum.toFixed(1));
  return figures;
}

/** The cells of these columns below the first header that has them all. */
function rowsUnder(book: Book, titles: readonly string[]): CellValue[][] {
  const wanted = titles.map(foldHeader);
  for (const { rows } of book)
    for (const [top, header] of rows.entries()) {
      const folded = header.map(foldHeader);
      const at = wanted.map((title) => folded.indexOf(title));
      if (at.every((index) => index >= 0))
        return rows.slice(top + 1).map((row) => at.map((index) => row[index] ?? null));
    }
  return [];
}
