import { CellError, type CellValue } from "../../units/cell.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { numberText } from "../evaluate/number-text.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { textNumber } from "../evaluate/text-number.ts";
import { VALUE } from "../evaluate/value.ts";
import { define, defineIn, fail } from "./define.ts";
import { formatted } from "./number-format.ts";
import { roundTo } from "./round-to.ts";

const thousands = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, ",");

/** With so many decimals; behind the 15 digits that Excel keeps stand zeros. */
function withDigits(x: number, places: number): string {
  const [mantissa = "0", exponent = "0"] = x.toExponential(14).split("e");
  const digits = mantissa.replace(".", "");
  const whole = Number(exponent) + 1; // digits before the point; fewer than one: zeros behind it
  const padded = whole > 0 ? digits.padEnd(whole, "0") : "0".repeat(1 - whole) + digits;
  const at = Math.max(1, whole);
  const rest = padded.slice(at, at + places).padEnd(places, "0");
  return places > 0 ? `${padded.slice(0, at)}.${rest}` : padded.slice(0, at);
}

/** Fixed decimals; a negative count rounds left of the point. */
function fixed(x: number, decimals: number, separated: boolean): string {
  const places = Math.trunc(decimals);
  if (places > 127) fail(VALUE);
  const rounded = roundTo(x, places, Math.round);
  const plain = withDigits(Math.abs(rounded), Math.max(0, places));
  const [whole = "0", fraction] = plain.split(".");
  const text = (separated ? thousands(whole) : whole) + (fraction ? `.${fraction}` : "");
  return rounded < 0 ? `-${text}` : text;
}

function numberValue(text: string, decimal: string, group: string): number | CellError {
  const point = decimal[0] ?? ".";
  const comma = group[0] ?? ",";
  let rest = text.replace(/\s/g, "");
  if (rest === "") return 0;
  const percents = /%*$/.exec(rest)?.[0].length ?? 0;
  rest = rest.slice(0, rest.length - percents);
  const [whole = "", decimals, ...more] = rest.split(point);
  if (more.length > 0 || decimals?.includes(comma)) return VALUE;
  const number = textNumber(`${whole.replaceAll(comma, "")}${decimals === undefined ? "" : `.${decimals}`}`);
  return number === undefined ? VALUE : number / 100 ** percents;
}

/** Strict text (form 1) quotes strings, so that it could stand in a formula. */
function valueText(value: CellValue, strict: boolean): string {
  if (value instanceof CellError) return value.code;
  if (typeof value === "string") return strict ? `"${value.replaceAll('"', '""')}"` : value;
  if (typeof value === "number") return numberText(value);
  return value === null ? "" : value ? "TRUE" : "FALSE";
}

export const textFormat: readonly WorksheetFunction[] = [
  defineIn("TEXT", "any text", (frame, value, pattern) => formatted(value, pattern, frame.grid.date1904)),
  define("FIXED", "number [number] [boolean]", (x, decimals = 2, plain = false) => fixed(x, decimals, !plain)),
  define("DOLLAR", "number [number]", (x, decimals = 2) => {
    const text = fixed(Math.abs(x), decimals, true);
    return x < 0 ? `($${text})` : `$${text}`;
  }),
  define("VALUE", "value", (value) => {
    if (typeof value === "string") return textNumber(value) ?? VALUE;
    return typeof value === "boolean" ? VALUE : (value ?? 0);
  }),
  define("NUMBERVALUE", "text [text] [text]", (text, decimal = ".", group = ",") => numberValue(text, decimal, group)),
  define("VALUETOTEXT", "any [number]", (value, form = 0) => valueText(value, form === 1)),
  defineIn("ARRAYTOTEXT", "array [number]", (frame, array, form = 0) => {
    const rows = toMatrix(array, frame);
    if (form === 1) return `{${rows.map((row) => row.map((v) => valueText(v, true)).join(",")).join(";")}}`;
    return rows
      .flat()
      .map((v) => valueText(v, false))
      .join(", ");
  }),
];
