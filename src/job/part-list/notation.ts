/**
 * How a list writes its figures, told by those of its cells that can be read in one way only. What could be read in two
 * ways is decided by nothing else.
 */
import type { CellValue } from "../../units/cell.ts";
import { namesGauge } from "../../units/parse-gauge.ts";

export type DecimalSign = "." | ",";

export interface Notation {
  /** undefined where no cell tells, or where some say one thing and some the other. */
  readonly decimal: DecimalSign | undefined;
  /** Some cell shows the sign itself; else fractions, inches and gauges speak for a point. */
  readonly isSeen: boolean;
  /** Shown by a cell with both signs. */
  readonly thousands: DecimalSign | undefined;
  /** Said by the person: it decides where cells could be read in two ways. */
  readonly isStated: boolean;
}

/** "0.25", "12.5", "1200.500": no thousands could be parted there. */
const CLEAR_DECIMAL = /^[-+]?(?:0?([.,])\d+|\d{1,3}([.,])(?:\d{1,2}|\d{4,9})|\d{4,9}([.,])\d+)$/;
/** "1,234.5" and "1.234,5": the last sign parts the decimals. */
const BOTH_SIGNS = /^[-+]?\d{1,3}(?:,\d{3})+(\.)\d+$|^[-+]?\d{1,3}(?:\.\d{3})+(,)\d+$/;
const UNIT = /\s*(?:mm|cm|m|in|inch|inches|ft|"|″|”|'|deg|°)\.?$/i;
/** Fractions, feet, inches and gauges are written where decimals have a point (common practice). */
export const US_WORDS = /\d\s*\/\s*\d|\d\s*(?:"|″|”|'|in\b|inch|ft\b)/i;

/** @param texts every cell of a column of lengths or angles, lists taken apart: counts have no decimals to tell by. */
export function notationOf(texts: Iterable<string>, stated: DecimalSign | undefined): Notation {
  if (stated) return { decimal: stated, isSeen: true, thousands: undefined, isStated: true };
  let [points, commas, american, open] = [false, false, false, false];
  let thousands: DecimalSign | undefined;
  for (const text of texts) {
    const plain = text.trim().slice(0, LONGEST).replace(UNIT, "");
    const both = BOTH_SIGNS.exec(plain);
    const sign = [CLEAR_DECIMAL.exec(plain), both].flatMap((found) => found?.slice(1) ?? []).find(Boolean);
    if (both) thousands = sign === "." ? "," : ".";
    if (sign === ".") points = true;
    if (sign === ",") commas = true;
    if (twoReadings(plain)?.sign === ",") open = true;
    if (namesGauge(text) || US_WORDS.test(text.slice(0, LONGEST))) american = true;
  }
  const decimal = commas ? (points ? undefined : ",") : points || (american && !open) ? "." : undefined;
  return { decimal, isSeen: points || commas, thousands, isStated: false };
}
const LONGEST = 60;

/** "1,250", "-1.250": a decimal, or thousands. */
const EITHER = /^([-+]?[1-9]\d{0,2})([.,])(\d{3})$/;
/** "1,234,567", "1,234.5", "1.234,5": parted twice, or by both signs. */
const GROUPED = /^([-+]?[1-9]\d{0,2})((?:,\d{3})+(?:\.\d+)?|(?:\.\d{3})+(?:,\d+)?)$/;

interface TwoReadings {
  readonly sign: DecimalSign;
  readonly asDecimal: number;
  readonly asThousands: number;
}

/** "1 000", "1'000": parted by what no table of a bill reads. */
export const isSpaced = (text: string): boolean => /^[-+]?[1-9]\d{0,2}(?:[\s'’]\d{3})+(?:[.,]\d+)?$/.test(text.trim());
export const SPACED = "a thousand? Write it without a space or stroke: 1000";

/** "1½" is "1 1/2". */
export const plainFractions = (cell: CellValue): CellValue =>
  typeof cell === "string"
    ? cell.replace(/(\d\s*)?([¼½¾⅛⅜⅝⅞])/g, (_, whole: string | undefined, sign: string) => {
        const fraction = sign.normalize("NFKD").replace("⁄", "/");
        return whole === undefined ? fraction : `${whole.trim()} ${fraction}`;
      })
    : cell;

/** The two ways in which such a figure could be read; undefined where there is one, or none. */
export function twoReadings(text: string): TwoReadings | undefined {
  const found = EITHER.exec(text.trim());
  if (!found) return undefined;
  const [, whole = "", sign = "", rest = ""] = found;
  return { sign: sign as DecimalSign, asDecimal: Number(`${whole}.${rest}`), asThousands: Number(whole + rest) };
}

/** A figure whose signs say by themselves which of them part thousands. */
export function groupedNumber(text: string): number | undefined {
  const found = GROUPED.exec(text.trim());
  if (!found || EITHER.test(text.trim())) return undefined;
  const [, whole = "", rest = ""] = found;
  const [groups, decimals] = rest.startsWith(",") ? [/,/g, "."] : [/\./g, ","];
  return Number(whole + rest.replace(groups, "").replace(decimals, "."));
}
