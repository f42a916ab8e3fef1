import { CellError } from "../../units/cell.ts";

/**
 * Number formats that the library reads otherwise than Excel, written so that both agree: each of several % multiplies
 * by a hundred, and every comma behind the last whole or the last decimal placeholder divides by a thousand (ECMA-376
 * part 1, 18.8.31).
 */
export function plainPattern(pattern: string, value: number): { readonly pattern: string; readonly value: number } {
  if (!/%[\s\S]*%|,[.]|[.][\s\S]*,/.test(pattern)) return { pattern, value };
  const sections = pattern.match(/(?:"[^"]*"|\\.|\[[^\]]*\]|[^;])+/g) ?? [];
  if (sections.some((section) => /\[[<>=]/.test(section))) return { pattern, value };
  const at = value < 0 && sections.length > 1 ? 1 : value === 0 && sections.length > 2 ? 2 : 0;
  const tokens: readonly string[] = (sections[at] ?? "").match(/"[^"]*"|\\.|\[[^\]]*\]|_.|\*.|[\s\S]/g) ?? [];
  const percents = tokens.filter((token) => token === "%").length;
  const point = tokens.indexOf(".");
  const last = tokens.findLastIndex(isPlaceholder);
  const lastWhole = point < 0 ? last : tokens.slice(0, point).findLastIndex(isPlaceholder);
  const scales = (i: number): boolean =>
    tokens[i] === "," && point >= 0 && ((i > lastWhole && i < point) || (i > last && last > point));
  const commas = tokens.filter((_, i) => scales(i)).length;
  if (percents < 2 && commas === 0) return { pattern, value };
  let seen = 0;
  const rewritten = tokens.map((token, i) => (scales(i) ? "" : token === "%" && ++seen > 1 ? '"%"' : token)).join("");
  const scaled = shifted(value, (percents > 1 ? 2 * (percents - 1) : 0) - 3 * commas);
  return { pattern: rewritten, value: at === 1 ? Math.abs(scaled) : scaled };
}

const isPlaceholder = (token: string): boolean => /^[0#?]$/.test(token);

/** A number with its decimal point moved, without the noise of a multiplication. */
function shifted(value: number, places: number): number {
  const [mantissa = "0", exponent = "0"] = value.toExponential().split("e");
  return Number(`${mantissa}e${Number(exponent) + places}`);
}

const ZEROS = /\/(0{2,})(?![0-9#?])/;
const FRACTION = /[0#?] *\/ *([0#?]+|\d+)/;

/** A number so near to a whole one that no fraction of the pattern is nearer: the library would show 1 1/1 for 0.999. */
function nearWhole(pattern: string, value: number): number {
  const below = FRACTION.exec(pattern.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, ""))?.[1];
  if (below === undefined) return value;
  const most = /^[1-9]/.test(below) ? Number(below) : 10 ** below.length - 1;
  const whole = Math.round(value);
  return Math.abs(value - whole) < 1 / (2 * most) ? whole : value;
}

/**
 * "# 0/000": the zeros of a denominator stand before its digits (3/004), where the library puts them behind (3/400). It
 * is asked for blanks instead, which are then zeros on the right side.
 */
export function fraction(
  pattern: string,
  value: number,
  show: (pattern: string, value: number) => string | CellError,
): string | CellError {
  const shown = nearWhole(pattern, value);
  const width = ZEROS.exec(pattern)?.[1]?.length;
  if (width === undefined) return show(pattern, shown);
  const text = show(pattern.replace(ZEROS, `/${"?".repeat(width)}`), shown);
  if (text instanceof CellError) return text;
  return text.replace(
    /\/(\d*)( *)/,
    (_all, digits: string, blanks: string) =>
      `/${(digits || "1").padStart(width, "0")}${blanks.slice(width - digits.length)}`,
  );
}
