import { CellError, type CellValue } from "../../units/cell.ts";
import { toText } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { areasOf, firstValue, toMatrix } from "../evaluate/reference.ts";
import { isReference, VALUE, type Value } from "../evaluate/value.ts";
import { alias, define, defineIn, fail } from "./define.ts";
import { wildcard } from "./wildcards.ts";
import { windowsByte, windowsCharacter } from "./windows-1252.ts";

const LONGEST = 32_767;

const count = (n: number): number => {
  const whole = Math.trunc(n);
  return whole < 0 ? fail(VALUE) : whole;
};

const joined = (text: string): string => (text.length > LONGEST ? fail(VALUE) : text);

const asText = (value: CellValue | undefined): string => {
  const text = toText(value);
  return text instanceof CellError ? fail(text) : text;
};

/** Every value of the arguments in reading order. */
function* allValues(frame: Frame, args: readonly Value[]): Generator<CellValue> {
  for (const arg of args) {
    if (isReference(arg)) for (const area of areasOf(arg)) yield* usedValues(frame, area);
    else for (const row of toMatrix(arg, frame)) yield* row;
  }
}

function usedValues(frame: Frame, area: Parameters<Frame["grid"]["matrix"]>[0]): CellValue[] {
  const bottom = Math.min(area.bottom, Math.max(area.top, frame.grid.lastRow(area.sheet)));
  return frame.grid
    .matrix(bottom === area.bottom ? area : Object.assign(Object.create(Object.getPrototypeOf(area)), area, { bottom }))
    .flat();
}

function find(wanted: string, within: string, start: number): number {
  const from = Math.trunc(start) - 1;
  if (from < 0 || from > within.length) fail(VALUE);
  const at = within.indexOf(wanted, from);
  return at < 0 ? fail(VALUE) : at + 1;
}

/** SEARCH: without case, with wildcards. */
function search(wanted: string, within: string, start: number): number {
  const from = Math.trunc(start) - 1;
  if (from < 0 || from > within.length) fail(VALUE);
  if (wanted === "") return from + 1;
  const at = wildcard(wanted).search(within, from);
  return at < 0 ? fail(VALUE) : at + 1;
}

function substitute(text: string, old: string, fresh: string, which: number | undefined): string {
  if (old === "") return text;
  if (which === undefined) return joined(text.replaceAll(old, () => fresh));
  const nth = Math.trunc(which);
  if (nth < 1) fail(VALUE);
  let at = -1;
  for (let i = 0; i < nth; i++) {
    at = text.indexOf(old, at < 0 ? 0 : at + old.length);
    if (at < 0) return text;
  }
  return text.slice(0, at) + fresh + text.slice(at + old.length);
}

/** A capital after everything that is not a letter, the rest small. */
const proper = (text: string): string =>
  text.toLowerCase().replace(/\p{L}+/gu, (word) => word.charAt(0).toUpperCase() + word.slice(1));

/** Letter by letter, like Windows: a letter without a capital of its own (ß) stays. */
const upper = (text: string): string =>
  text.replace(/\p{Ll}/gu, (letter) => {
    const capital = letter.toUpperCase();
    return capital.length === letter.length ? capital : letter;
  });

const trim = (text: string): string => text.replace(/ +/g, " ").replace(/^ | $/g, "");

const char = (n: number): string | CellError => {
  const byte = Math.trunc(n);
  return byte < 1 || byte > 255 ? VALUE : windowsCharacter(byte);
};

const len = define("LEN", "text", (text) => text.length);
const left = define("LEFT", "text [number]", (text, n = 1) => text.slice(0, count(n)));
const right = define("RIGHT", "text [number]", (text, n = 1) => (count(n) === 0 ? "" : text.slice(-count(n))));
const mid = define("MID", "text number number", (text, start, n) =>
  start < 1 ? VALUE : text.slice(Math.trunc(start) - 1, Math.trunc(start) - 1 + count(n)),
);
const replace = define("REPLACE", "text number number text", (text, start, n, fresh) => {
  const from = Math.trunc(start) - 1;
  return from < 0 ? VALUE : joined(text.slice(0, from) + fresh + text.slice(from + count(n)));
});
const findText = define("FIND", "text text [number]", (wanted, within, start = 1) => find(wanted, within, start));
const searchText = define("SEARCH", "text text [number]", (wanted, within, start = 1) => search(wanted, within, start));

export const text: readonly WorksheetFunction[] = [
  len,
  left,
  right,
  mid,
  replace,
  findText,
  searchText,
  // In single-byte languages the byte functions are the plain ones (Microsoft's description of LENB).
  alias("LENB", len),
  alias("LEFTB", left),
  alias("RIGHTB", right),
  alias("MIDB", mid),
  alias("REPLACEB", replace),
  alias("FINDB", findText),
  alias("SEARCHB", searchText),
  define("UPPER", "text", upper),
  define("LOWER", "text", (text) => text.toLowerCase()),
  define("PROPER", "text", proper),
  define("TRIM", "text", trim),
  // biome-ignore lint/suspicious/noControlCharactersInRegex: CLEAN removes exactly these
  define("CLEAN", "text", (text) => text.replace(/[\u0000-\u001f]/g, "")),
  define("EXACT", "text text", (a, b) => a === b),
  define("REPT", "text number", (text, n) => {
    const times = count(n);
    return text.length * times > LONGEST ? VALUE : text.repeat(times);
  }),
  define("SUBSTITUTE", "text text text [number?]", substitute),
  define("CONCATENATE", "text...", (...texts) => joined(texts.join(""))),
  defineIn("CONCAT", "array...", (frame, ...args) => joined([...allValues(frame, args)].map(asText).join(""))),
  defineIn("TEXTJOIN", "array boolean array...", (frame, delimiter, ...rest) => {
    const [skipEmpty, ...args] = rest as [boolean, ...Value[]];
    const between = [...allValues(frame, [delimiter])].map(asText);
    const texts = [...allValues(frame, args)].map(asText).filter((text) => !skipEmpty || text !== "");
    return joined(
      texts.reduce((all, text, i) => all + (i > 0 ? (between[(i - 1) % between.length] ?? "") : "") + text, ""),
    );
  }),
  define("CHAR", "number", char),
  define("CODE", "text", (text) => (text === "" ? VALUE : windowsByte(text))),
  define("UNICHAR", "number", (n) => {
    const point = Math.trunc(n);
    return point < 1 || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff) ? VALUE : String.fromCodePoint(point);
  }),
  define("UNICODE", "text", (text) => text.codePointAt(0) ?? VALUE),
  defineIn("T", "range", (frame, given) => {
    const value = firstValue(given, frame);
    return typeof value === "string" || value instanceof CellError ? value : "";
  }),
  define("ENCODEURL", "text", (text) =>
    encodeURIComponent(text).replace(/[!'()*]/g, (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`),
  ),
];
