/** One length of a part list: what it is, or why that is open. A figure that could be another one is asked about. */
import { missing } from "../../units/certain.ts";
import { namesGauge, parseGauge } from "../../units/parse-gauge.ts";
import { parseLength } from "../../units/parse-length.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { unitSize } from "../../units/unit-words.ts";
import { Doubt } from "./doubt.ts";
import { unitWord } from "./heading-words.ts";
import { groupedNumber, isSpaced, type Notation, SPACED, twoReadings } from "./notation.ts";

/** How large a length of this column may be: what reading a figure in two ways comes to. */
export type LengthClass = "thickness" | "side" | "detail";

interface LengthContext {
  readonly size: LengthClass;
  /** Of the heading, "ga" among them; undefined where it names none. */
  readonly unit: string | undefined;
  /** What a plain number under such a heading is in. */
  readonly plainUnit: UnitSystem;
  /** Why plain numbers under a heading without unit are not taken. */
  readonly unitDoubt: string | undefined;
  /** Why the sizes of this line are not taken for inches, whatever the heading says. */
  readonly metricDoubt: string | undefined;
  /** The line's material comes as thin sheet alone. */
  readonly isSheet: boolean;
  readonly shop: UnitSystem;
  readonly notation: Notation;
}

/** Chosen: beyond these no part of this trade goes, in mm. */
const LARGEST: Readonly<Record<LengthClass, number>> = { thickness: 300, side: 12_192, detail: 300 };
/** Chosen: smaller ones are most often inches under a heading in mm. */
const SMALLEST_MM: Readonly<Record<LengthClass, number>> = { thickness: 0.3, side: 3, detail: 0 };
/** Chosen: a plate as thick as this, in inches, is most often a gauge or millimeters. */
const THICK_INCHES = { plain: 1, headed: 3 } as const;
/** Chosen: from here on plate comes in sixteenths of an inch, written to hundredths at the least. */
const [THICK_PLAIN, ROUNDED] = [0.5, 0.006];
/** Chosen: a side longer than this, in inches, is most often millimeters under a heading without unit. */
export const LONG_INCHES = 144;
const INCH_DENOMINATORS = [2, 4, 8, 16, 32, 64];

const OWN_UNIT = /^([^a-z"″”']+?)\s*(mm|cm|m|inches|inch|ins|in|"|″|”|'')\.?$/i;
const FRACTION = /^(?:\d+(?:\s*-\s*|\s+))?\d+\s*[/⁄]\s*(\d+)$/;

/** The cell as the bill's table holds it: a number in the shop's unit, or text that brings its own. Throws Doubt. */
export function readLengthCell(given: string | number, context: LengthContext): string | number {
  const { size, shop } = context;
  if (typeof given === "string") {
    const text = given.trim();
    if (namesGauge(text) && size === "thickness") return gaugeOf(text);
    const own = OWN_UNIT.exec(text);
    if (own) {
      const [, figure = "", word = ""] = own;
      const unit = unitWord(["''", "″", "”"].includes(word) ? '"' : word) ?? missing();
      return inUnit(figureOf(figure, unit, context), unit, shop);
    }
    const feet = /ft|foot|feet|['′’]/i.test(text) ? parseLength(text, shop) : undefined;
    if (typeof feet === "number") return text;
  }
  if (context.unit === "ga" && !(isFraction(given) && parseGauge(given) === undefined)) return gaugeUnderHeading(given);
  // A fraction of an inch in a column of gauges is one in any shop.
  const unit = context.unit === "ga" ? "in" : (context.unit ?? context.plainUnit);
  const value = typeof given === "number" ? given : figureOf(given.trim(), unit, context);
  if (context.unit === undefined && context.unitDoubt !== undefined && !isFraction(given))
    throw new Doubt("unit in doubt", context.unitDoubt);
  const isInch = unit === "in" || unit === "inch" || unit === "inches";
  if (isInch && size !== "thickness" && context.metricDoubt !== undefined && !isFraction(given))
    throw new Doubt("unit in doubt", context.metricDoubt);
  checkUnit(value, unit, context);
  return inUnit(value, unit, shop);
}

const isFraction = (given: string | number): boolean => typeof given === "string" && FRACTION.test(given.trim());

function gaugeOf(text: string): string {
  const gauge = parseGauge(text);
  if (gauge === undefined) throw new Doubt("unreadable", 'not a gauge; write "10 ga"');
  return `${text.replace(/\s*(?:ga|gage|gauge)\.?\s*$/i, "").replace(/^(?:no\.?|#)\s*/i, "")} ga`;
}

function gaugeUnderHeading(given: string | number): string {
  const gauge = parseGauge(typeof given === "number" ? given : given.trim());
  if (gauge === undefined)
    throw new Doubt(
      "unit in doubt",
      'not a gauge, under a heading that says gauge; write its unit: "3 mm", "0.125 in"',
    );
  return `${String(given)
    .trim()
    .replace(/^(?:no\.?|#)\s*/i, "")} ga`;
}

/** Sheet of a brake's range, and thicker in mm than most of it. */
export const isGauge = (value: number): boolean => Number.isInteger(value) && value >= 7 && value <= 30;

function figureOf(text: string, unit: string, context: LengthContext): number {
  const { notation, size } = context;
  const fraction = FRACTION.exec(text);
  if (fraction) {
    if (unit !== "in" && unit !== "inch" && unit !== "inches" && unit !== "ft")
      throw new Doubt("unit in doubt", `a fraction under a heading in ${unit}; write 1/4 in, or the figure in ${unit}`);
    if (!INCH_DENOMINATORS.includes(Number(fraction[1])))
      throw new Doubt("figure in doubt", "not a fraction on an inch rule; two figures? Write 2; 3 for a list");
  }
  const grouped = groupedNumber(text);
  if (grouped !== undefined) return grouped;
  const two = twoReadings(text);
  if (!two) {
    const value = parseNumber(text);
    if (isSpaced(text)) throw new Doubt("figure in doubt", SPACED);
    if (typeof value !== "number")
      throw new Doubt("unreadable", "not a length; write 0.25, 1/4, 6 mm, 2 ft 6 in or, of a thickness, 10 ga");
    if (notation.isStated && notation.decimal === "." && text.includes(","))
      throw new Doubt("figure in doubt", "a decimal comma in a list whose decimals have a point");
    if (notation.isStated && notation.decimal === "," && text.includes("."))
      throw new Doubt("figure in doubt", "a decimal point in a list whose decimals have a comma");
    return value;
  }
  if (notation.isStated) return two.sign === notation.decimal ? two.asDecimal : two.asThousands;
  const mayBeThousands = toMm(two.asThousands, unit) <= LARGEST[size];
  // Too large with thousands: it is a decimal, unless the list's own have the other sign.
  const mayBeDecimal = notation.decimal === "," ? two.sign === "," : two.sign === ".";
  if (!mayBeThousands && mayBeDecimal) return two.asDecimal;
  throw new Doubt(
    "figure in doubt",
    `${two.asDecimal} ${unit} or ${two.asThousands} ${unit}? Write it without a sign for thousands, or say --decimal point or --decimal comma`,
  );
}

const toMm = (value: number, unit: string): number => value * (unitSize(unit, "length") ?? 1);

function checkUnit(value: number, unit: string, { size, unit: headed, isSheet }: LengthContext): void {
  const mm = toMm(value, unit);
  const inches = mm / MM_PER_INCH;
  const isInch = unit === "in" || unit === "inch" || unit === "inches";
  const under = headed === undefined ? "" : ` under a heading in ${headed}`;
  const open = (words: string) => new Doubt("unit in doubt", words);
  if (isInch && size === "thickness" && inches >= (headed === undefined ? THICK_INCHES.plain : THICK_INCHES.headed))
    throw open(`${value} in thick${under}? Write its unit: ${value} ga, ${value} mm or ${value} in`);
  if (
    isInch &&
    size === "thickness" &&
    inches >= THICK_PLAIN &&
    Math.abs(inches * 16 - Math.round(inches * 16)) > ROUNDED * 16
  )
    throw open(`${value} in thick${under}? No plate is: write its unit, ${value} mm or ${value} in`);
  // Sheet by A1008, A1011 and A653 ends under 7 mm (from memory of their scopes).
  if (unit === "mm" && size === "thickness" && isSheet && isGauge(value))
    throw open(`${value} mm thick${under}, or ${value} ga? Sheet of this material is thinner: write its unit`);
  if (isInch && size === "side" && headed === undefined && inches > LONG_INCHES)
    throw open(`${value} in long? Write its unit: ${value} mm or ${value} in`);
  if (mm > LARGEST[size]) throw open(`${value} ${unit}${under} is more than any part; write its unit`);
  if (!isInch && value !== 0 && mm < SMALLEST_MM[size])
    throw open(`${value} ${unit}${under}? Write its unit: ${value} in or ${value} mm`);
}

const inUnit = (value: number, unit: string, shop: UnitSystem): string | number => {
  const isShops = shop === "mm" ? unit === "mm" : unit === "in" || unit === "inch" || unit === "inches";
  return isShops ? value : `${value} ${unit}`;
};
