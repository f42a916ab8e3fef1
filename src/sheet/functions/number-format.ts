import { format, isValidFormat } from "numfmt";
import { CellError, type CellValue } from "../../units/cell.ts";
import { DAYS_1904 } from "../evaluate/calendar.ts";
import { textNumber } from "../evaluate/text-number.ts";
import { VALUE } from "../evaluate/value.ts";
import { fraction, plainPattern } from "./format-repairs.ts";
import { scientific } from "./scientific-format.ts";

/** Last day of the calendar, 31 December 9999, as a serial of the 1900 system. */
const LAST_DAY = 2_958_465;

const bare = (pattern: string): string => pattern.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, "");

/** With [h] or [s] in a format every other h or s means the elapsed time too. */
function elapsedThroughout(pattern: string): string {
  const units = ["h", "s"].filter((unit) => new RegExp(`\\[${unit}+\\]`, "i").test(pattern));
  if (units.length === 0) return pattern;
  const loose = new RegExp(`"[^"]*"|\\\\.|\\[[^\\]]*\\]|([${units.join("")}])\\1*`, "gi");
  return pattern.replace(loose, (all, unit?: string) => (unit ? `[${all}]` : all));
}

/** A value in a number format: the numfmt library, and own rules where it refuses or errs. */
export function formatted(value: CellValue, pattern: string, date1904: boolean): string | CellError {
  if (value instanceof CellError) return value;
  const number = typeof value === "string" ? textNumber(value) : typeof value === "boolean" ? undefined : (value ?? 0);
  const shown = number ?? (typeof value === "boolean" ? (value ? "TRUE" : "FALSE") : value);
  if (pattern === "") return typeof shown === "number" ? "" : String(shown);
  if (!isValidFormat(pattern)) {
    const section = typeof shown === "number" ? scientific(pattern, shown) : undefined;
    return section ?? VALUE;
  }
  if (typeof shown !== "number") return shownBy(pattern, shown);
  const dated = /[dmyhs]/i.test(bare(pattern).replace(/general/gi, ""));
  const elapsed = /\[[hms]+\]/i.test(pattern);
  if (!dated && !elapsed) {
    const plain = plainPattern(pattern, shown);
    return fraction(plain.pattern, plain.value, shownBy);
  }
  // Only the 1904 system has times before its beginning: they show as the same time with a minus.
  if (shown < 0) {
    if (!date1904) return VALUE;
    const positive = formatted(-shown, pattern, true);
    return positive instanceof CellError ? positive : `-${positive}`;
  }
  // The library knows the 1900 calendar only; spans of time have no calendar.
  const serial = date1904 && !elapsed ? shown + DAYS_1904 : shown;
  return serial >= LAST_DAY + 1 ? VALUE : shownBy(halvesOfTheDay(elapsedThroughout(pattern)), serial);
}

/** A mark around AM/PM, so that the letter of a/p can be put in its place. */
const MARK = "\u0001";

/** a/p shows one small letter; the library knows AM/PM and A/P only. */
const halvesOfTheDay = (pattern: string): string =>
  pattern.replace(/"[^"]*"|\\.|a\/p/g, (all) => (all === "a/p" ? `"${MARK}"AM/PM"${MARK}"` : all));

function shownBy(pattern: string, value: number | string | null): string | CellError {
  try {
    const text = format(pattern, value, { dateErrorThrows: true, nbsp: false });
    return text.includes(MARK)
      ? text.replace(new RegExp(`${MARK}([AP])M${MARK}`, "g"), (_all, letter) => letter.toLowerCase())
      : text;
  } catch {
    return VALUE;
  }
}
