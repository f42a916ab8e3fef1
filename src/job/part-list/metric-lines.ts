/**
 * Lines of a list in inches that look metric. A 20 x 20 mm bracket would also bend at 20 x 20 in, and nothing else
 * would stop it. They are asked about, never assumed.
 */
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { type Field, givenOf, isEmpty, itemsOf } from "./fields.ts";
import { sizeOf } from "./read-cell.ts";

interface Side {
  readonly value: number;
  /** A figure without unit and stroke. */
  readonly isPlain: boolean;
  /** Its heading says inches. */
  readonly isHeaded: boolean;
}

const ASK = "Write the unit, or say --units in";

/** Why the plain sizes of each row are not taken for inches; undefined where nothing speaks against them. */
export function metricLines(body: CellMatrix, fields: readonly Field[]): (string | undefined)[] {
  const sides = body.map((row) => (row.every(isEmpty) ? [] : sidesOf(row, fields)));
  const least = sides.map((each) => Math.min(...each.map(({ value }) => value)));
  const known = least.filter(Number.isFinite).sort((a, b) => a - b);
  return body.map((row, i) => {
    const [own, smallest] = [itemAt(sides, i), itemAt(least, i)];
    if (hasMetricThickness(row, fields)) return `no unit, on a line whose thickness is metric: inches or mm? ${ASK}`;
    const exact = own.find(({ value, isPlain }) => isPlain && isExact(value));
    if (exact) return `${exact.value} in, or ${exact.value} mm (${exact.value / MM_PER_INCH} in)? ${ASK}`;
    // The lower of the middle two, of the other lines.
    const others = known.toSpliced(known.indexOf(smallest), 1);
    const usual = others[Math.ceil(others.length / 2) - 1];
    if (usual === undefined || !own.every(isWhole) || smallest < Math.max(LEAST_MM, FAR * usual)) return undefined;
    return isPlate(row, fields) &&
      !(own.every(({ value }) => value % 5 === 0) && own.some(({ value }) => value % 12 !== 0))
      ? undefined
      : `whole figures far larger than those of the other lines, inches or mm? ${ASK}`;
  });
}
/** Chosen: so many times what is usual in the list, and no side of a metric part is shorter. */
const [FAR, LEAST_MM] = [4, 10];

const isWhole = ({ value, isPlain, isHeaded }: Side): boolean => isPlain && !isHeaded && Number.isInteger(value);

/** 12.7 and 38.1 are whole eighths of an inch in mm, and no sixteenths as inches. */
const isExact = (value: number): boolean =>
  isWholeNumber((value / MM_PER_INCH) * 8) && !isWholeNumber(value * 16) && value > 0;
const isWholeNumber = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-9;

function sidesOf(row: readonly CellValue[], fields: readonly Field[]): Side[] {
  return fields.flatMap((field) => {
    const isInches = field.unit === undefined || /^(?:in|inch|inches)$/.test(field.unit);
    if (sizeOf(field.key) !== "side" || !isInches) return [];
    return itemsOf(String(givenOf(row, field) ?? "")).flatMap((text): Side[] => {
      const value = parseNumber(text);
      const isPlain = !text.includes("/");
      return typeof value === "number" ? [{ value, isPlain, isHeaded: field.unit !== undefined }] : [];
    });
  });
}

/** One flange has no bend. */
export function isPlate(row: readonly CellValue[], fields: readonly Field[]): boolean {
  const flanges = fields.find(({ key }) => key === "flanges");
  const given = flanges && givenOf(row, flanges);
  return !isEmpty(given) && itemsOf(String(given)).length === 1;
}

function hasMetricThickness(row: readonly CellValue[], fields: readonly Field[]): boolean {
  const thickness = fields.find(({ key }) => key === "thickness");
  const own = thickness && givenOf(row, thickness);
  return typeof own === "string" && /\d\s*(?:mm|cm)\.?\s*$/i.test(own);
}
