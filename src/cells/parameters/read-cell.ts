/** Reads one cell of a table by its column. */
import { type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { namesGauge } from "../../units/parse-gauge.ts";
import { parseLength } from "../../units/parse-length.ts";
import { parseNumber } from "../../units/parse-number.ts";
import type { Millimeters } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import type { QuantityKind, UnitSystem } from "../../units/system.ts";
import { MM_PER_INCH, toInternal } from "../../units/system.ts";
import { ANGLES_HINT, DEGREE_SIGN, isSeveralAngles } from "./angle.ts";
import { type Column, quantityOf } from "./column.ts";
import { bareGauge, DATE_HINT, LONGEST, looksLikeDate, THICKEST } from "./length.ts";

type Read = string | number | readonly number[] | CellValue | undefined;
const MOST_ITEMS = 100; // no part of this trade has more bends; a longer list is a slip

/** Where a cell stands: its column, the size of the header's own unit, how a refusal names it. */
interface CellPlace {
  readonly column: Column;
  readonly size: number | undefined;
  readonly label: string;
  readonly system: UnitSystem;
}

export function readCell(cell: CellValue, place: CellPlace): Read {
  const { column, label } = place;
  if (isBlank(cell) || (column.optional && cell === 0 && noZero(column))) {
    if (column.optional) return undefined;
    throw wrong(label, "given", cell);
  }
  if (isCellError(cell)) throw wrong(label, "a value", cell);
  switch (column.kind) {
    case "cell":
      return cell;
    case "text":
      return kept(String(cell).trim(), column, label, cell);
    case "thickness":
      if (typeof cell === "string" && namesGauge(cell)) return cell.trim();
      return lengthUpTo(THICKEST, "thickness", cell, place);
    case "lengths":
    case "angles":
      return list(cell, label).map((item) => one(item, quantityOf(column.kind), place));
    default:
      return one(cell, column.kind, place);
  }
}

/**
 * Older builds of Excel pass the blank cells of a range as 0. Where a column may be blank and 0 says nothing (no tool is
 * called 0, nobody signs as 0, no hole is 0 wide), it is such a blank.
 */
const noZero = ({ kind, rule }: Column): boolean =>
  kind === "text" || kind === "thickness" || (rule !== undefined && !rule.fits(0));

function list(cell: CellValue, label: string): CellValue[] {
  const items = typeof cell === "string" ? cell.split(";").map((item) => item.trim()) : [cell];
  while (items.length > 1 && items.at(-1) === "") items.pop();
  if (items.some(isBlank)) throw wrong(label, "a list without gaps", cell, 'write "2; 3.5; 2"');
  if (items.length > MOST_ITEMS) throw wrong(label, `a list of at most ${MOST_ITEMS}`, `${items.length} of them`);
  return items;
}

const one = (cell: CellValue, kind: FigureKind, place: CellPlace): number =>
  kind === "length" ? lengthUpTo(LONGEST, "length", cell, place) : figure(cell, kind, place);

/** A length that no sheet of this trade has is a slip, most often a fraction that has become a date. */
function lengthUpTo(longest: Millimeters, noun: string, cell: CellValue, place: CellPlace): number {
  const value = figure(cell, "length", place);
  const { label } = place;
  const gauge = noun === "thickness" ? bareGauge(cell, isInches(place) ? "in" : "mm") : undefined;
  if (gauge) throw wrong(label, "a thickness with its unit", cell, gauge);
  if (value > longest || (noun === "thickness" && value <= 0))
    throw wrong(
      label,
      `a ${noun} of more than 0 and at most ${showBoth(longest, "length")}`,
      cell,
      looksLikeDate(cell) ? DATE_HINT : undefined,
    );
  return value;
}

/** A header's own unit comes before the call's. */
const isInches = ({ size, system }: CellPlace): boolean =>
  size === undefined ? system === "in" : size === MM_PER_INCH;

type FigureKind = "number" | "seconds" | QuantityKind;

function figure(cell: CellValue, kind: FigureKind, place: CellPlace): number {
  const { column, label } = place;
  if (kind === "angle" && isSeveralAngles(cell))
    throw wrong(label, column.rule?.words ?? "an angle", cell, ANGLES_HINT);
  const value = readFigure(cell, kind, place);
  if (value === "ambiguous")
    throw wrong(label, column.rule?.words ?? "a number", cell, "write 1234 or 1.234: the comma could mean either");
  if (typeof value !== "number" || !Number.isFinite(value)) throw wrong(label, column.rule?.words ?? "a number", cell);
  return kept(value, column, label, cell);
}

function kept<T>(value: T, { rule }: Column, label: string, cell: CellValue): T {
  if (rule && !rule.fits(value)) throw wrong(label, rule.words, cell);
  return value;
}

function readFigure(cell: CellValue, kind: FigureKind, { size, system }: CellPlace): number | "ambiguous" | undefined {
  if (typeof cell === "boolean") return undefined;
  const plain = typeof cell === "string" ? parseNumber(cell.replace(kind === "angle" ? DEGREE_SIGN : "", "")) : cell;
  // A length typed with its own unit keeps it, whatever the header says.
  if (kind === "length" && typeof cell === "string" && plain === undefined) return parseLength(cell, system);
  if (typeof plain !== "number") return plain === "ambiguous" ? plain : undefined;
  if (kind === "number") return plain;
  if (size !== undefined || kind === "seconds") return plain * (size ?? 1);
  return toInternal(plain, kind, system);
}
