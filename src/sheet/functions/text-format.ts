import { format, isValidFormat } from "numfmt";
import { CellError, type CellValue } from "../../units/cell.ts";
import { DAYS_1904 } from "../evaluate/calendar.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { numberText } from "../evaluate/number-text.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { textNumber } from "../evaluate/text-number.ts";
import { VALUE } from "../evaluate/value.ts";
import { define, defineIn, fail } from "./define.ts";
import { roundTo } from "./round-to.ts";
import { scientific } from "./scientific-format.ts";

const bare = (pattern: string): string => pattern.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, "");

/** With [h] or [s] in a format every other h or s means the elapsed time too. */
function elapsedThroughout(pattern: string): string {
  const units = ["h", "s"].filter((unit) => new RegExp(`\\[${unit}+\\]`, "i").test(pattern));
  if (units.length === 0) return pattern;
  const loose = new RegExp(`"[^"]*"|\\\\.|\\[[^\\]]*\\]|([${units.join("")}])\\1*`, "gi");
  return pattern.replace(loose, (all, unit?: string) => (unit ? `[${all}]` : all));
}

/** A value in a number format: the numfmt library, and own rules for the exponents that it refuses. */
export function formatted(value: CellValue, pattern: string, date1904: boolean): string | CellError {
  if (value instanceof CellError) return value;
  const number = typeof value === "string" ? textNumber(value) : typeof value === "boolean" ? undefined : (value ?? 0);
  const shown = number ?? (typeof value === "boolean" ? (value ? "TRUE" : "FALSE") : value);
  if (pattern === "") return typeof shown === "number" ? "" : String(shown);
  if (!isValidFormat(pattern)) {
    const section = typeof shown === "number" ? scientific(pattern, shown) : undefined;
    return section ?? VALUE;
  }
  const dated = typeof shown === "number" && /[dmyhs]/i.test(bare(pattern).replace(/general/gi, ""));
  // Only the 1904 system has times before its beginning: they show as the same time with a minus.
  if (date1904 && typeof shown === "number" && shown < 0 && (dated || /\[[hms]+\]/i.test(pattern))) {
    const positive = formatted(-shown, pattern, true);
    return positive instanceof CellError ? positive : `-${positive}`;
  }
  // The library knows the 1900 calendar only; spans of time have no calendar.
  const shifts = date1904 && dated && !/\[[hms]+\]/i.test(pattern);
  try {
    return format(elapsedThroughout(pattern), shifts ? shown + DAYS_1904 : shown, {
      dateErrorThrows: true,
      nbsp: false,
    });
  } catch {
    return VALUE;
  }
}

const thousands = (digits: string): string => digits.replace(/\B(?=(\d{3})+(?!\d))/g, ",");

/** Fixed decimals; a negative count rounds left of the point. */
function fixed(x: number, decimals: number, separated: boolean): string {
  const places = Math.trunc(decimals);
  if (places > 127) fail(VALUE);
  const rounded = roundTo(x, places, Math.round);
  const plain = Math.abs(rounded).toFixed(Math.min(100, Math.max(0, places)));
  const [whole = "0", fraction] = plain.split(".");
  const text = (separated ? thousands(whole) : whole) + (fraction ? `.${fraction}` : "");
  return rounded < 0 ? `-${text}` : text;
}

function numberValue(text: string, decimal: string, group: string): number | CellError {
  const point = decimal[0] ?? ".";
  const comma = group[0] ?? ",";
  let rest = text.replace(/\s/g, "");
  if (rest === "") return 0;
  const percents = /%*$/.exec(rest)![0].length;
  rest = rest.slice(0, rest.length - percents);
  const parts = rest.split(point);
  if (parts.length > 2) return VALUE;
  if (parts[1]?.includes(comma)) return VALUE;
  const number = textNumber(`${parts[0]!.replaceAll(comma, "")}${parts.length > 1 ? `.${parts[1]}` : ""}`);
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
  defineIn("TEXT", "et", (frame, value, pattern) => formatted(value, pattern, frame.grid.date1904)),
  define("FIXED", "n?nb", (x, decimals = 2, plain = false) => fixed(x, decimals, !plain)),
  define("DOLLAR", "n?n", (x, decimals = 2) => {
    const text = fixed(Math.abs(x), decimals, true);
    return x < 0 ? `($${text})` : `$${text}`;
  }),
  define("VALUE", "v", (value) => {
    if (typeof value === "string") return textNumber(value) ?? VALUE;
    return typeof value === "boolean" ? VALUE : (value ?? 0);
  }),
  define("NUMBERVALUE", "t?tt", (text, decimal = ".", group = ",") => numberValue(text, decimal, group)),
  define("VALUETOTEXT", "e?n", (value, form = 0) => valueText(value, form === 1)),
  defineIn("ARRAYTOTEXT", "a?n", (frame, array, form = 0) => {
    const rows = toMatrix(array, frame);
    if (form === 1) return `{${rows.map((row) => row.map((v) => valueText(v, true)).join(",")).join(";")}}`;
    return rows
      .flat()
      .map((v) => valueText(v, false))
      .join(", ");
  }),
];
