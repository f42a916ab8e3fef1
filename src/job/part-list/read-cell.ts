/** One cell of a part list as the bill's table holds it, or the doubt that keeps it from being taken. */
import type { MaterialTable } from "../../bill/nouns/material-table.ts";
import { readDue } from "../../cells/parameters/instant.ts";
import { readCell } from "../../cells/parameters/read-cell.ts";
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import type { CellValue } from "../../units/cell.ts";
import { isBlank, isCellError } from "../../units/cell.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { Refusal } from "../../units/refusal.ts";
import type { UnitSystem } from "../../units/system.ts";
import { Doubt } from "./doubt.ts";
import type { BillKey } from "./heading-words.ts";
import { groupedNumber, isSpaced, type Notation, SPACED, twoReadings } from "./notation.ts";
import { type DateOrder, dateOf } from "./read-date.ts";
import { type LengthClass, readLengthCell } from "./read-length.ts";

interface CellContext {
  readonly key: BillKey;
  /** Of the heading, undefined where it names none. */
  readonly unit: string | undefined;
  readonly plainUnit: UnitSystem;
  readonly unitDoubt: string | undefined;
  /** Why the sizes of this line are not taken for inches. */
  readonly metricDoubt: string | undefined;
  /** The line's material comes as thin sheet alone. */
  readonly isSheet: boolean;
  /** A list of figures may stand in the cell. */
  readonly mayList: boolean;
  readonly notation: Notation;
  /** Of dates that can be two days. */
  readonly dates: DateOrder | undefined;
  readonly shop: UnitSystem;
  readonly materials: MaterialTable;
}

const SIDES: readonly BillKey[] = ["width", "flanges", "crossFlanges", "holeDistance", "notchPath"];
export const sizeOf = (key: BillKey): LengthClass =>
  key === "thickness" || key === "actual" ? "thickness" : SIDES.includes(key) ? "side" : "detail";
export const isLength = (key: BillKey): boolean => ["length", "lengths", "thickness"].includes(BILL_COLUMNS[key].kind);

/** Throws Doubt. */
export function readPartCell(given: CellValue, context: CellContext): CellValue {
  const { key } = context;
  const column = BILL_COLUMNS[key];
  if (isCellError(given)) throw new Doubt("unreadable", `an error of the sheet: ${given.code}`);
  if (isBlank(given) || (typeof given === "string" && given.trim() === "")) {
    if (!("optional" in column))
      throw new Doubt("missing", "nothing stands here; a blank does not repeat the line above");
    return null;
  }
  const cell = written(given, context);
  checked(cell, context);
  return cell;
}

function written(given: string | number | boolean, context: CellContext): CellValue {
  const { key } = context;
  switch (BILL_COLUMNS[key].kind) {
    case "number":
      return countOf(given, context.notation);
    case "thickness":
    case "length":
      return readLengthCell(asFigure(given), lengthContext(context));
    case "lengths":
      return listOf(given, context, (item) => readLengthCell(item, lengthContext(context)));
    case "angles":
      return anglesOf(given, context);
    case "cell":
      return dateOf(given, context.dates);
    default:
      return typeof given === "number" ? given : String(given).replace(/\s+/g, " ").trim();
  }
}
const DEGREES = /\s*(?:°|deg\.?|degrees?)$/i;

/** "90/90" is two angles, never a fraction; "90 x 2" may be two bends of 90, or one of 90 and one of 2. */
function anglesOf(given: string | number | boolean, context: CellContext): CellValue {
  const isParted = typeof given === "string" && /[/⁄x×*]/i.test(given);
  const list = typeof given === "string" ? given.replace(/\s*[/⁄]\s*/g, "; ") : given;
  const cell = listOf(list, context, (item) => (typeof item === "number" ? item : item.replace(DEGREES, "")));
  // Chosen: a smaller one is more often how many bends there are, or a fraction.
  if (
    isParted &&
    String(cell)
      .split("; ")
      .some((item) => Math.abs(Number(item)) < LEAST_ANGLE)
  )
    throw new Doubt("figure in doubt", "angles, or how many? Write 90; 90 for two bends, 22.5 for 22 1/2");
  // Chosen: no one bends 1.57 degrees.
  const radians = String(cell)
    .split("; ")
    .find((item) => Math.abs(Number(item)) < LARGEST_RADIANS && !Number.isInteger(Number(item)));
  if (radians !== undefined && !DEGREES.test(String(given)))
    throw new Doubt("unit in doubt", `${radians} degrees, or radians? Write its unit: ${radians} deg`);
  return context.unit === "included" ? String(cell).split("; ").map(turned).join("; ") : cell;
}
/** An included angle as the angle the sheet is turned through, on the side it says. */
function turned(item: string): string {
  const value = parseNumber(item);
  return typeof value === "number" ? String(Math.sign(value || 1) * (180 - Math.abs(value))) : item;
}
const LEAST_ANGLE = 10;
const LARGEST_RADIANS = 3.2;

const lengthContext = (context: CellContext) => ({ ...context, size: sizeOf(context.key) });

function asFigure(given: string | number | boolean): string | number {
  if (typeof given === "boolean") throw new Doubt("unreadable", "not a figure");
  return given;
}

/** "1,000", "12 ea", "12.0": how many. */
function countOf(given: string | number | boolean, notation: Notation): number {
  const cell = asFigure(given);
  if (typeof cell === "number") return cell;
  const text = cell.trim().replace(COUNTED, "");
  const grouped = groupedNumber(text);
  if (grouped !== undefined) return grouped;
  const two = twoReadings(text);
  if (!two) {
    const value = /^[-+]?\d+(?:[.,]0+)?$/.test(text) ? parseNumber(text) : undefined;
    if (isSpaced(text)) throw new Doubt("figure in doubt", SPACED);
    if (typeof value !== "number") throw new Doubt("unreadable", "not a whole number");
    return value;
  }
  const { decimal, isSeen, thousands, isStated } = notation;
  if (isStated) return two.sign === decimal ? two.asDecimal : two.asThousands;
  if (decimal !== undefined && decimal !== two.sign && two.sign === thousands) return two.asThousands;
  // No one orders 1.25 pieces; a comma in a list of decimal points parts thousands.
  if (two.sign === "," && (decimal === "." || (decimal === undefined && !Number.isInteger(two.asDecimal))))
    return two.asThousands;
  if (decimal === "." && isSeen && Number.isInteger(two.asDecimal)) return two.asDecimal;
  throw new Doubt("figure in doubt", `${two.asDecimal} or ${two.asThousands}? Write it without a sign for thousands`);
}
const COUNTED = /\s*(?:ea|each|pcs?|pieces|nos?|off|x)\.?$/i;

/** Lists are parted by ";"; people also write "2 x 3", "2 + 3" and one below the other. "2,3" could be one figure. */
function listOf(
  given: string | number | boolean,
  { mayList, notation }: CellContext,
  read: (item: string | number) => string | number,
): CellValue {
  const cell = asFigure(given);
  if (typeof cell === "number") return read(cell);
  const text = cell.trim();
  const items = partsOf(text);
  if (items.length > 1 && !mayList) throw new Doubt("unreadable", "more than one figure in a column of single lengths");
  if (items.length === 1) {
    if (/,/.test(text) && notation.decimal !== ",")
      throw new Doubt("figure in doubt", "one figure or a list? Write 2; 3 for a list, 2.3 for a figure");
    return read(text);
  }
  return items.map((item) => read(item.replace(/,$/, ""))).join("; ");
}

function partsOf(text: string): string[] {
  const by = [/;/, /\r?\n/, /\s*[x×*]\s*/i, /\s*\+\s*/, /,\s+/].find((sign) => sign.test(text));
  const items = by ? text.split(by).map((item) => item.trim()) : [text];
  while (items.length > 1 && items.at(-1) === "") items.pop();
  return items;
}

/** The rules of the bill's own column, said without its grammar. */
function checked(cell: CellValue, { key, shop, materials }: CellContext): void {
  try {
    if (key === "material") {
      materials.find(cell, "material");
      // A coating alone leaves the grade of the sheet open, though the table of materials knows the word.
      if (/^galv(?:ani[sz]ed)?\.?$/i.test(String(cell)))
        throw new Doubt("unknown material", 'names no grade; galvanized sheet is "A653 CS"');
    } else if (key === "due") readDue(cell, "cell");
    else readCell(cell, { column: BILL_COLUMNS[key], size: undefined, label: "cell", system: shop });
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    throw new Doubt(key === "material" ? "unknown material" : "not allowed", sentenceOf(problem));
  }
}

/** "cell must be a number from 1 to 3; got 7; write ..." -> "must be a number from 1 to 3; write ...". */
export function sentenceOf({ message }: Refusal): string {
  const [rule = "", ...rest] = message.replace(/^.*? must be /s, "must be ").split("; got ");
  const given = rest.join("; got ");
  const hint = given
    .replace(/^"[^"]*"/, "")
    .split("; ")
    .slice(1)
    .join("; ");
  return hint === "" ? rule : `${rule}; ${hint}`;
}
