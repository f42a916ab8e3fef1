import { parseValue } from "numfmt";

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The number a text stands for in arithmetic (en-US: "1,234", "5%", "1/2/2020", "10:30"), undefined if none. */
export function textNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  if (PLAIN.test(trimmed)) {
    const plain = Number(trimmed);
    return Number.isFinite(plain) ? plain : undefined;
  }
  return read(trimmed)?.value;
}

/** Built-in formats of dates and times (ECMA-376 part 1, 18.8.30). */
const isMoment = (format: number | null | undefined): boolean =>
  typeof format === "number" && ((format >= 14 && format <= 22) || (format >= 45 && format <= 47));

/** The date or time that a text states; undefined for any other number. */
export function textMoment(text: string): number | undefined {
  const found = read(text.trim());
  return found && isMoment(found.formatId) ? found.value : undefined;
}

function read(text: string): { readonly value: number; readonly formatId?: number | null | undefined } | undefined {
  if (!/\d/.test(text) || text.length > 64) return undefined;
  const parsed = parseValue(text);
  if (typeof parsed?.value !== "number" || !Number.isFinite(parsed.value)) return undefined;
  return { value: parsed.value, formatId: parsed.formatId };
}
