import { CellError, type CellValue, ERROR_CODES, type ErrorCode } from "../../units/cell.ts";
import { entryOf } from "../../units/certain.ts";
import { compareValues, sameText } from "../evaluate/compare.ts";
import { textNumber } from "../evaluate/text-number.ts";
import { errorOf } from "../evaluate/value.ts";
import { wildcard } from "./wildcards.ts";

export type Test = (value: CellValue) => boolean;

const HAS_WILDCARD = /[*?~]/;

export const hasWildcard = (text: string): boolean => HAS_WILDCARD.test(text);

/** Text equality as in criteria and lookups: without case, with wildcards. */
export function textTest(pattern: string): (text: string) => boolean {
  if (!hasWildcard(pattern)) return (text) => sameText(text, pattern);
  return wildcard(pattern).fits;
}

/** What a word in a criterion stands for: a number, a truth value, an error, or undefined for text. */
function literal(text: string): CellValue | undefined {
  const number = textNumber(text);
  if (number !== undefined) return number;
  const upper = text.toUpperCase();
  if (upper === "TRUE" || upper === "FALSE") return upper === "TRUE";
  return (ERROR_CODES as readonly string[]).includes(upper) ? errorOf(upper as ErrorCode) : undefined;
}

/** Equality: a number also matches text that reads as that number. */
function equals(wanted: CellValue): Test {
  if (typeof wanted === "number") {
    return (value) => value === wanted || (typeof value === "string" && value !== "" && textNumber(value) === wanted);
  }
  if (wanted instanceof CellError) return (value) => value instanceof CellError && value.code === wanted.code;
  return (value) => value === wanted;
}

/** The condition of COUNTIF, SUMIFS and their kin. */
export function criterion(given: CellValue): Test {
  if (given === null) return equals(0);
  if (typeof given !== "string") return equals(given);
  const [, operator = "", rest = ""] = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(given) ?? [];
  if (rest === "") {
    if (operator === "") return (value) => value === null || value === "";
    if (operator === "=") return (value) => value === null;
    if (operator === "<>") return (value) => value !== null;
    return () => false;
  }
  const wanted = literal(rest);
  if (operator === "" || operator === "=" || operator === "<>") {
    let same: Test;
    if (wanted !== undefined) same = equals(wanted);
    else {
      const matches = textTest(rest);
      same = (value) => typeof value === "string" && matches(value);
    }
    return operator === "<>" ? (value) => !same(value) : same;
  }
  const limit = wanted ?? rest;
  if (limit instanceof CellError) return () => false;
  const holds = entryOf(ORDER, operator);
  return (value) => typeof value === typeof limit && value !== null && holds(compareValues(value, limit));
}

const ORDER: ReadonlyMap<string, (order: number) => boolean> = new Map([
  ["<", (order: number) => order < 0],
  [">", (order: number) => order > 0],
  ["<=", (order: number) => order <= 0],
  [">=", (order: number) => order >= 0],
]);
