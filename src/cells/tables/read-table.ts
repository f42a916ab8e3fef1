/**
 * Reads a range of the workbook as a table: columns found by their header in any order, the unit in the header honoured,
 * missing columns named, unknown ones ignored. A wrong cell is named by table, row and column with the rule.
 */
import * as z from "zod/mini";
import { type CellMatrix, type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { parseLength } from "../../units/parse-length.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { wrong } from "../../units/refusal.ts";
import type { QuantityKind, UnitSystem } from "../../units/system.ts";
import { toInternal } from "../../units/system.ts";
import { unitSize, unitWords } from "../../units/unit-words.ts";

// Compiled validators need eval, which a strict content security policy forbids.
z.config({ jitless: true });

export interface Column {
  /** Headers it may have, the first is the one we write. Compared without case, blanks and punctuation. */
  readonly headers: readonly string[];
  readonly kind: "text" | "number" | QuantityKind;
  readonly optional?: true;
  /** The rule a cell must keep, in words and as a zod schema; without one any text or number will do. */
  readonly rule?: { readonly words: string; readonly schema: z.ZodMiniType<unknown> };
}
export type Columns = Readonly<Record<string, Column>>;
type CellOf<C extends Column> = C["kind"] extends "text" ? string : number;
export type Row<C extends Columns> = {
  readonly [K in keyof C]: C[K]["optional"] extends true ? CellOf<C[K]> | undefined : CellOf<C[K]>;
} & {
  /** The row of the range it came from, the header being row 1. */
  readonly row: number;
};

const MOST_ROWS = 20_000; // a whole column dragged in by mistake is refused instead of crawled through

export const positive = { words: "a number of more than 0", schema: z.number().check(z.positive()) };
export const notNegative = { words: "a number of at least 0", schema: z.number().check(z.nonnegative()) };
export const between = (low: number, high: number, unit = "") => ({
  words: `a number from ${low} to ${high}${unit}`,
  schema: z.number().check(z.gte(low), z.lte(high)),
});

const fold = (text: string): string => text.toLowerCase().replace(/[\s\-_.:*]+/g, "");
const HEADER = /^(.*?)\s*(?:[([]([^)\]]*)[)\]])?$/;

export function readTable<C extends Columns>(
  matrix: CellMatrix,
  columns: C,
  name: string,
  system: UnitSystem,
): Row<C>[] {
  if (matrix.length > MOST_ROWS) throw wrong(name, `a range of at most ${MOST_ROWS} rows`, matrix.length);
  const header = matrix[0] ?? [];
  const places = Object.entries(columns).map(([key, column]) => ({ key, column, ...findColumn(header, column, name) }));
  const rows: Row<C>[] = [];
  for (let i = 1; i < matrix.length; i++) {
    const cells = matrix[i]!;
    if (places.every(({ index }) => index < 0 || isBlank(cells[index] ?? null))) continue;
    const row: Record<string, unknown> = { row: i + 1 };
    for (const { key, column, index, size } of places) {
      const label = `${name} row ${i + 1} column "${column.headers[0]}"`;
      row[key] = index < 0 ? undefined : readCell(cells[index] ?? null, column, size, label, system);
    }
    rows.push(row as Row<C>);
  }
  return rows;
}

function findColumn(
  header: readonly CellValue[],
  column: Column,
  table: string,
): { index: number; size: number | undefined } {
  const wanted = column.headers.map(fold);
  for (let index = 0; index < header.length; index++) {
    const cell = header[index];
    if (typeof cell !== "string" && typeof cell !== "number") continue;
    const [, title = "", unit] = HEADER.exec(String(cell).trim()) ?? [];
    if (!wanted.includes(fold(title))) continue;
    if (unit === undefined || column.kind === "text" || column.kind === "number") return { index, size: undefined };
    const size = unitSize(unit, column.kind);
    if (size === undefined)
      throw wrong(
        `${table} column "${column.headers[0]}"`,
        `in one of the units ${unitWords(column.kind).join(", ")}`,
        unit,
        "write the unit in brackets in the header",
      );
    return { index, size };
  }
  if (!column.optional)
    throw wrong(
      table,
      `a range whose first row is the header and has a column "${column.headers[0]}"`,
      header
        .filter((cell) => !isBlank(cell))
        .slice(0, 12)
        .map(String)
        .join(", ") || null,
    );
  return { index: -1, size: undefined };
}

function readCell(
  cell: CellValue,
  column: Column,
  size: number | undefined,
  label: string,
  system: UnitSystem,
): string | number | undefined {
  if (isBlank(cell)) {
    if (column.optional) return undefined;
    throw wrong(label, "given", cell);
  }
  if (isCellError(cell)) throw wrong(label, "a value", cell);
  const value = column.kind === "text" ? String(cell).trim() : readFigure(cell, column.kind, size, system);
  const rule = column.rule;
  if (column.kind !== "text" && (typeof value !== "number" || !Number.isFinite(value)))
    throw wrong(label, rule?.words ?? "a number", cell);
  if (rule && !rule.schema.safeParse(value).success) throw wrong(label, rule.words, cell);
  return value as string | number;
}

function readFigure(
  cell: CellValue,
  kind: "number" | QuantityKind,
  size: number | undefined,
  system: UnitSystem,
): number | undefined {
  if (typeof cell === "boolean") return undefined;
  // A length typed with its own unit keeps it, whatever the header says.
  if (kind === "length" && typeof cell === "string" && typeof parseNumber(cell) !== "number") {
    const own = parseLength(cell, system);
    return typeof own === "number" ? own : undefined;
  }
  const value = typeof cell === "string" ? parseNumber(cell) : (cell as number);
  if (typeof value !== "number") return undefined;
  if (kind === "number") return value;
  return size === undefined ? toInternal(value, kind, system) : value * size;
}
