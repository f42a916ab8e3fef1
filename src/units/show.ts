/** How figures are written in sentences: few digits, always with the unit. Never used for a cell's value. */
import type { CellValue } from "./cell.ts";
import { isCellError } from "./cell.ts";
import { fromInternal, type QuantityKind, type UnitSystem, unitName } from "./system.ts";

/** Up to `digits` significant figures without exponent or trailing zeros: 0.25, 12.7, 1830. */
export function showNumber(value: number, digits = 4): string {
  if (value === 0) return "0";
  if (!Number.isFinite(value)) return "a number too large";
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  if (magnitude >= 15 || magnitude < -9) return value.toExponential(2);
  const decimals = Math.min(Math.max(digits - 1 - magnitude, 0), 12);
  const text = value.toFixed(decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

export const show = (value: number, kind: QuantityKind, system: UnitSystem, digits = 4): string =>
  `${showNumber(fromInternal(value, kind, system), digits)} ${unitName(kind, system)}`;

/** Decimals a rule, a caliper or a back gauge is read and set to (common practice). */
const READ_TO: Record<UnitSystem, number> = { in: 3, mm: 2 };

/** A calculated length as the floor reads it: thousandths of an inch, hundredths of a millimeter. */
export const showReading = (value: number, system: UnitSystem): string =>
  `${showPlain(value, system)} ${unitName("length", system)}`;

/** The remainder of a unit conversion: 3/16 in, by way of millimeters, is not below 0.1875. */
const DUST = 1e-9;

/** The same without its unit, for sizes such as 8 x 48: all decimals, so that a column lines up, or none. */
export function showPlain(value: number, system: UnitSystem): string {
  const text = (fromInternal(value, "length", system) + Math.sign(value) * DUST).toFixed(READ_TO[system]);
  return text.replace(/^-(?=[0.]+$)/, "").replace(/\.0+$/, "");
}

/** A sheet's thickness, one writing for every paper: three decimals, and the fraction of an inch where it is one. */
export function showThickness(value: number, system: UnitSystem): string {
  const sixtyFourths = fromInternal(value, "length", "in") * TAPE;
  const isFraction = system === "in" && Math.abs(sixtyFourths - Math.round(sixtyFourths)) < FRACTION_DUST * TAPE;
  return `${showReading(value, system)}${isFraction ? ` (${showOnTape(value)})` : ""}`;
}
const FRACTION_DUST = 1e-5; // in

/** Divisions of an inch that a tape is read to: 1/64, and 1/32 over 24 in (common practice). */
const [TAPE, LONG_TAPE, LONG_IN] = [64, 32, 24];

/** The nearest mark of an inch tape, as it is read: "4 41/64", "3/8", "12". */
export function showOnTape(value: number): string {
  const inches = fromInternal(value, "length", "in");
  const divisions = inches > LONG_IN ? LONG_TAPE : TAPE;
  let [top, bottom] = [Math.round(inches * divisions), divisions];
  const whole = Math.floor(top / bottom);
  top -= whole * bottom;
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  if (top === 0) return String(whole);
  return `${whole > 0 ? `${whole} ` : ""}${top}/${bottom}`;
}

/** As a person marks it out: "1.823 · 1 53/64" in inches, hundredths in millimeters; without its unit. */
export function showMark(value: number, system: UnitSystem): string {
  const decimal = showPlain(value, system);
  const mark = system === "in" ? showOnTape(value) : decimal;
  return mark === decimal ? decimal : `${decimal} · ${mark}`;
}

/** A length in both systems, for messages that do not know which one the reader speaks: "0.5 in (12.7 mm)". */
export const showBoth = (value: number, kind: QuantityKind): string =>
  `${show(value, kind, "in")} (${show(value, kind, "mm")})`;

/** Tons in sentences: two figures, because the formula is not better than that. */
export const showForce = (newtons: number, system: UnitSystem): string => {
  const value = fromInternal(newtons, "force", system);
  return `${showNumber(Number(value.toPrecision(2)), 3)} ${system === "in" ? "tons" : unitName("force", system)}`;
};

/** What the user gave, as a message quotes it. Long text is cut, so that a message stays one line. */
export function showGiven(value: CellValue | undefined): string {
  if (value === null || value === undefined || value === "") return "nothing";
  if (isCellError(value)) return value.code;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number") return showNumber(value, 10);
  const line = value.replace(/\s+/g, " ");
  return `"${line.length > 60 ? `${line.slice(0, 57)}...` : line}"`;
}
