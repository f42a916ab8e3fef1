/** What a column of a table may hold, and how it is found by its header. */
import { type CellValue, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import type { QuantityKind } from "../../units/system.ts";
import { unitSize, unitWords } from "../../units/unit-words.ts";

/**
 * "seconds": a duration, in the header's s, min or h; "thickness": a length or a gauge, which only the row's material
 * can tell; "lengths" and "angles": a list such as "2; 3.5; 2"; "cell": as it stands.
 */
type ColumnKind = "text" | "number" | "seconds" | "thickness" | "lengths" | "angles" | "cell" | QuantityKind;

export interface Column {
  /** Headers it may have, the first is the one we write. Compared without case, blanks and punctuation. */
  readonly headers: readonly [string, ...string[]];
  readonly kind: ColumnKind;
  /** "cell": the column must be there, its cells may be blank. */
  readonly optional?: true | "cell";
  /** The rule a cell, or each item of a list, must keep, in words and as a test; without one any will do. */
  readonly rule?: { readonly words: string; readonly fits: (value: unknown) => boolean };
}
export type Columns = Readonly<Record<string, Column>>;
type CellOf<C extends Column> = C["kind"] extends "text"
  ? string
  : C["kind"] extends "lengths" | "angles"
    ? readonly number[]
    : C["kind"] extends "thickness"
      ? number | string
      : C["kind"] extends "cell"
        ? CellValue
        : number;
export type Row<C extends Columns> = {
  readonly [K in keyof C]: C[K]["optional"] extends true | "cell" ? CellOf<C[K]> | undefined : CellOf<C[K]>;
} & {
  /** The row of the range it came from, the header being row 1. */
  readonly row: number;
};

/** Seconds in one of these, by definition. */
const DURATIONS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600 };
export const durationSize = (unit: string): number | undefined =>
  Object.hasOwn(DURATIONS, unit.trim().toLowerCase()) ? DURATIONS[unit.trim().toLowerCase()] : undefined;

const QUANTITY_OF: Partial<Record<ColumnKind, QuantityKind>> = {
  thickness: "length",
  lengths: "length",
  angles: "angle",
};
const WITHOUT_UNIT: readonly ColumnKind[] = ["text", "number", "cell"];
export const quantityOf = (kind: ColumnKind): QuantityKind => QUANTITY_OF[kind] ?? (kind as QuantityKind);

const fold = (text: string): string => text.toLowerCase().replace(/[\s\-_.:*]+/g, "");
const HEADER = /^(.*?)\s*(?:[([]([^)\]]*)[)\]])?$/;

interface FoundColumn {
  /** -1: an optional column that is not there. */
  readonly index: number;
  /** Internal units (seconds for a duration) in one of the header's unit; undefined where the header names none. */
  readonly size: number | undefined;
}

export function findColumn(header: readonly CellValue[], column: Column, table: string): FoundColumn {
  const wanted = column.headers.map(fold);
  for (let index = 0; index < header.length; index++) {
    const cell = header[index];
    if (typeof cell !== "string" && typeof cell !== "number") continue;
    const [, title = "", unit] = HEADER.exec(String(cell).trim().slice(0, LONGEST_HEADER)) ?? [];
    if (!wanted.includes(fold(title))) continue;
    return { index, size: sizeOf(column, unit, table) };
  }
  if (column.optional !== true)
    throw wrong(
      table,
      `a range whose first row is the header and has a column "${column.headers[0]}"`,
      header
        .filter((cell) => !isBlank(cell))
        .slice(0, 12)
        .map((cell) => (typeof cell === "string" ? cell : showGiven(cell)))
        .join(", ") || null,
    );
  return { index: -1, size: undefined };
}

const LONGEST_HEADER = 200;

function sizeOf(column: Column, unit: string | undefined, table: string): number | undefined {
  const label = `${table} column "${column.headers[0]}"`;
  const hint = "write the unit in brackets in the header";
  if (column.kind === "seconds") {
    const size = unit === undefined ? undefined : durationSize(unit);
    if (size === undefined)
      throw wrong(label, `in one of the units ${Object.keys(DURATIONS).join(", ")}`, unit ?? null, hint);
    return size;
  }
  if (unit === undefined || WITHOUT_UNIT.includes(column.kind)) return undefined;
  const kind = quantityOf(column.kind);
  const size = unitSize(unit, kind);
  if (size === undefined) throw wrong(label, `in one of the units ${unitWords(kind).join(", ")}`, unit, hint);
  return size;
}
