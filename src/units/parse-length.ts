/**
 * Reads a length that brings its own unit: "3 mm", "1-1/2 in", `2 ft 6-1/2 in`, `2' 6"`. A text without a unit is in the
 * unit system of the call. Returns millimeters, "ambiguous" (see parseNumber) or undefined for what is not a length.
 */
import { parseNumber } from "./parse-number.ts";
import { type Millimeters, mm } from "./quantity.ts";
import { MM_PER_INCH, type UnitSystem } from "./system.ts";

const UNITS: Record<string, number> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  "″": MM_PER_INCH,
  "”": MM_PER_INCH,
  "''": MM_PER_INCH,
  thou: MM_PER_INCH / 1000,
  ft: MM_PER_INCH * 12,
  foot: MM_PER_INCH * 12,
  feet: MM_PER_INCH * 12,
  "'": MM_PER_INCH * 12,
  "′": MM_PER_INCH * 12,
  "’": MM_PER_INCH * 12,
};
const FEET_AND_INCHES =
  /^([\d.,/⁄\s-]+?)\s*(ft|foot|feet|['′’])\s*-?\s*([\d.,/⁄][\d.,/⁄\s-]*?)\s*(in|inch|inches|["″”]|'')?$/i;
const WITH_UNIT = /^([-−+]?[\d.,/⁄\s-]+?)\s*([a-z]+|["″”'′’]|'')\.?$/i;

export function parseLength(text: string, system: UnitSystem): Millimeters | "ambiguous" | undefined {
  const trimmed = text.trim();
  if (trimmed.length > 60) return undefined;
  const plain = parseNumber(trimmed);
  if (plain !== undefined) return scaled(plain, system === "in" ? MM_PER_INCH : 1);
  const compound = FEET_AND_INCHES.exec(trimmed);
  if (compound) {
    const [, feetText = "", , inchText = ""] = compound;
    const [feet, inches] = [parseNumber(feetText), parseNumber(inchText)];
    if (typeof feet !== "number" || typeof inches !== "number")
      return feet === "ambiguous" || inches === "ambiguous" ? "ambiguous" : undefined;
    return feet < 0 ? undefined : mm((feet * 12 + inches) * MM_PER_INCH);
  }
  const [, figure = "", word = ""] = WITH_UNIT.exec(trimmed) ?? [];
  const size = Object.hasOwn(UNITS, word.toLowerCase()) ? UNITS[word.toLowerCase()] : undefined;
  const value = parseNumber(figure);
  return size === undefined || value === undefined ? undefined : scaled(value, size);
}

const scaled = (value: number | "ambiguous", size: number): Millimeters | "ambiguous" =>
  value === "ambiguous" ? value : mm(value * size);
