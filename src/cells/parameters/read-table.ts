/**
 * Reads a range of the workbook as a table: columns found by their header in any order, the unit in the header honored,
 * missing columns named, unknown ones ignored. A wrong cell is named by table, row and column with the rule.
 */
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Columns, findColumn, type Row } from "./column.ts";
import { readCell } from "./read-cell.ts";

export type { Column, Columns, Row } from "./column.ts";

const MOST_ROWS = 20_000; // a whole column dragged in by mistake is refused instead of crawled through

const number =
  (holds: (value: number) => boolean) =>
  (value: unknown): boolean =>
    typeof value === "number" && Number.isFinite(value) && holds(value);

export const positive = { words: "a number of more than 0", fits: number((value) => value > 0) };
export const notNegative = { words: "a number of at least 0", fits: number((value) => value >= 0) };
export const between = (low: number, high: number, unit = "") => ({
  words: `a number from ${low} to ${high}${unit}`,
  fits: number((value) => value >= low && value <= high),
});
export const whole = (low: number, high: number) => ({
  words: `a whole number from ${low} to ${high}`,
  fits: number((value) => Number.isSafeInteger(value) && value >= low && value <= high),
});
/** One of these words, whatever the case. */
export const oneOf = (...words: readonly string[]) => ({
  words: `one of ${words.map((word) => `"${word}"`).join(", ")}`,
  fits: (value: unknown) => typeof value === "string" && words.includes(value.toLowerCase()),
});

/** A row that could not be read: what is wrong with it, and its cells as they stand. */
interface WrongRow<C extends Columns> {
  readonly row: number;
  readonly refusal: Refusal;
  readonly cells: Readonly<Record<keyof C, CellValue>>;
}
export const isWrong = <C extends Columns>(row: Row<C> | WrongRow<C>): row is WrongRow<C> => "refusal" in row;

/** All rows, or a refusal that names the first wrong cell. */
export function readTable<C extends Columns>(
  matrix: CellMatrix,
  columns: C,
  name: string,
  system: UnitSystem,
): Row<C>[] {
  return readRows(matrix, columns, (row) => `${name} row ${row}`, { name, system }).map((row) => {
    if (isWrong(row)) throw row.refusal;
    return row;
  });
}

/**
 * Every row by itself: one of nonsense says so and leaves the others right. A missing column is refused for all.
 * @param place how a row is called in a refusal: "line 3 (sheet row 7)".
 */
export function readRows<C extends Columns>(
  matrix: CellMatrix,
  columns: C,
  place: (row: number) => string,
  { name, system }: { readonly name: string; readonly system: UnitSystem },
): (Row<C> | WrongRow<C>)[] {
  if (matrix.length > MOST_ROWS) throw wrong(name, `a range of at most ${MOST_ROWS} rows`, matrix.length);
  const header = matrix[0] ?? [];
  const places = Object.entries(columns).map(([key, column]) => ({ key, column, ...findColumn(header, column, name) }));
  const said = header.indexOf("Message");
  // A refused row of a spill holds its name and the sentence, and no figures after that.
  const onlySays = (cells: readonly CellValue[]) =>
    !isBlank(cells[said]) && places.every(({ index }) => index <= 0 || index === said || isBlank(cells[index]));
  const rows: (Row<C> | WrongRow<C>)[] = [];
  for (let i = 1; i < matrix.length; i++) {
    const cells = itemAt(matrix, i);
    // Older builds of Excel pass the blanks of a range as 0, and a row of nothing but 0 is not a part, tool or sheet.
    if (places.every(({ index }) => index < 0 || isBlank(cells[index] || null))) continue;
    if (said > 0 && onlySays(cells)) continue;
    const row: Record<string, unknown> = { row: i + 1 };
    try {
      for (const { key, column, index, size } of places) {
        const label = `${place(i + 1)} column "${column.headers[0]}"`;
        row[key] = index < 0 ? undefined : readCell(cells[index] ?? null, { column, size, label, system });
      }
      rows.push(row as Row<C>);
    } catch (problem) {
      if (!(problem instanceof Refusal)) throw problem;
      const standing = Object.fromEntries(places.map(({ key, index }) => [key, cells[index] ?? null]));
      rows.push({ row: i + 1, refusal: problem, cells: standing as WrongRow<C>["cells"] });
    }
  }
  return rows;
}
