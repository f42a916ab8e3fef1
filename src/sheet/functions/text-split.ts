import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { CellError } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import { toText } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { CALC, NA, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";

const texts = (frame: Frame, value: Value): string[] =>
  toMatrix(value, frame)
    .flat()
    .map((v) => {
      const text = toText(v);
      return text instanceof CellError ? fail(text) : text;
    });

/** Where any of the delimiters stands, longest first where two begin together. */
function occurrences(
  text: string,
  delimiters: readonly string[],
  ignoreCase: boolean,
): { start: number; end: number }[] {
  const fold = (s: string): string => (ignoreCase ? s.toLowerCase() : s);
  const haystack = fold(text);
  const needles = delimiters.map(fold).sort((a, b) => b.length - a.length);
  const found: { start: number; end: number }[] = [];
  for (let at = 0; at < text.length; ) {
    const needle = needles.find((n) => n !== "" && haystack.startsWith(n, at));
    if (needle === undefined) at++;
    else {
      found.push({ start: at, end: at + needle.length });
      at += needle.length;
    }
  }
  return found;
}

function part(
  frame: Frame,
  text: string,
  delimiter: Value,
  options: { nth: number; ignoreCase: boolean; toEnd: boolean; otherwise: CellValue | undefined },
  before: boolean,
): CellValue {
  const nth = Math.trunc(options.nth);
  if (nth === 0 || (text.length > 0 && Math.abs(nth) > text.length)) return VALUE;
  const delimiters = texts(frame, delimiter);
  if (delimiters.includes("")) return before === nth > 0 ? "" : text;
  const places = occurrences(text, delimiters, options.ignoreCase);
  if (options.toEnd) {
    if (nth > 0) places.push({ start: text.length, end: text.length });
    else places.unshift({ start: 0, end: 0 });
  }
  const place = places.at(nth > 0 ? nth - 1 : nth);
  if (!place) return options.otherwise === undefined ? NA : options.otherwise;
  return before ? text.slice(0, place.start) : text.slice(place.end);
}

function split(text: string, delimiters: readonly string[], skipEmpty: boolean, ignoreCase: boolean): string[] {
  if (delimiters.length === 0) return [text];
  const pieces: string[] = [];
  let at = 0;
  for (const { start, end } of occurrences(text, delimiters, ignoreCase)) {
    pieces.push(text.slice(at, start));
    at = end;
  }
  pieces.push(text.slice(at));
  return skipEmpty ? pieces.filter((piece) => piece !== "") : pieces;
}

const partOfText = (name: string, before: boolean): WorksheetFunction =>
  defineIn(
    name,
    "text array [number?] [number?] [number?] [value?]",
    (frame, text, delimiter, nth = 1, mode = 0, end = 0, otherwise = undefined) =>
      part(frame, text, delimiter, { nth, ignoreCase: mode === 1, toEnd: end === 1, otherwise }, before),
  );

export const textSplit: readonly WorksheetFunction[] = [
  partOfText("TEXTBEFORE", true),
  partOfText("TEXTAFTER", false),
  defineIn(
    "TEXTSPLIT",
    "array array [array] [boolean?] [number?] [array]",
    (frame, given, columns, rows, skip = false, mode = 0, pad = undefined): Value => {
      const [text = ""] = texts(frame, given);
      const some = (value: Value): string[] => (value === undefined || value === null ? [] : texts(frame, value));
      const ignoreCase = mode === 1;
      const lines = split(text, some(rows), skip, ignoreCase).map((line) =>
        split(line, some(columns), skip, ignoreCase),
      );
      const width = Math.max(0, ...lines.map((line) => line.length));
      if (width === 0) return CALC;
      const padding = pad === undefined ? NA : topLeft(toMatrix(pad, frame));
      return lines.map((line) => [...line, ...new Array<CellValue>(width - line.length).fill(padding)]) as CellMatrix;
    },
  ),
];
