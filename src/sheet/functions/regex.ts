import type { CellError, CellMatrix } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NA, VALUE } from "../evaluate/value.ts";
import { define, fail } from "./define.ts";
import { allMatches, type Match, matchFrom } from "./regex-match.ts";
import { compilePattern, type Program } from "./regex-program.ts";

const LONGEST = 32_767;

const compiled = new Map<string, Program>();

/** The program of a pattern; 0 heeds case, 1 does not. */
function program(pattern: string, sensitivity: number): Program {
  const mode = Math.trunc(sensitivity);
  if (mode !== 0 && mode !== 1) fail(VALUE);
  const key = mode + pattern;
  const known = compiled.get(key);
  if (known) return known;
  const made = compilePattern(pattern, mode === 1);
  if (compiled.size > 100) compiled.clear();
  compiled.set(key, made);
  return made;
}

const group = (text: string, match: Match, n: number): string =>
  itemAt(match, 2 * n) < 0 ? "" : text.slice(match[2 * n], match[2 * n + 1]);

/** REGEXEXTRACT: the first match, all of them (1), or the groups of the first (2), side by side. */
function extract(text: string, pattern: string, mode: number, sensitivity: number): string | CellError | CellMatrix {
  const steps = program(pattern, sensitivity);
  const first = matchFrom(steps, text, 0);
  if (!first) return NA;
  switch (Math.trunc(mode)) {
    case 0:
      return group(text, first, 0);
    case 1:
      return [[...allMatches(steps, text)].map((match) => group(text, match, 0))];
    case 2:
      if (steps.groups === 0) return NA;
      return [Array.from({ length: steps.groups }, (_, i) => group(text, first, i + 1))];
    default:
      return VALUE;
  }
}

/** What a match is replaced by: $1 and ${1} are groups, $0 and $& the match, $$ a dollar. */
function replacementFor(replacement: string, text: string, match: Match, groups: number): string {
  return replacement.replace(/\$(?:(\$)|(&)|(\d{1,2})|\{(\d{1,2})\})/g, (_all, dollar, whole, bare, braced) => {
    if (dollar) return "$";
    const n = whole ? 0 : Number(bare ?? braced);
    return n > groups ? fail(VALUE) : group(text, match, n);
  });
}

/** REGEXREPLACE: every match, or one by its number, counted from the end when negative. */
function replaced(text: string, pattern: string, replacement: string, occurrence: number, sensitivity: number): string {
  const steps = program(pattern, sensitivity);
  const matches = [...allMatches(steps, text)];
  const nth = Math.trunc(occurrence);
  if (nth < -matches.length) return text;
  const chosen = nth === 0 ? matches : matches.slice(nth - (nth > 0 ? 1 : 0)).slice(0, 1);
  let out = "";
  let at = 0;
  for (const match of chosen) {
    out += text.slice(at, match[0]) + replacementFor(replacement, text, match, steps.groups);
    at = itemAt(match, 1);
    if (out.length > LONGEST) fail(VALUE);
  }
  return out + text.slice(at);
}

export const regex: readonly WorksheetFunction[] = [
  define("REGEXTEST", "text text [number]", (text, pattern, sensitivity = 0) =>
    Boolean(matchFrom(program(pattern, sensitivity), text, 0)),
  ),
  define("REGEXEXTRACT", "text text [number] [number]", (text, pattern, mode = 0, sensitivity = 0) =>
    extract(text, pattern, mode, sensitivity),
  ),
  define(
    "REGEXREPLACE",
    "text text text [number] [number]",
    (text, pattern, replacement, occurrence = 0, sensitivity = 0) =>
      replaced(text, pattern, replacement, occurrence, sensitivity),
  ),
];
