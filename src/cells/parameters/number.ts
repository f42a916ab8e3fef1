/** Plain numbers: read from a number or from text that is one. */
import type { CellValue } from "../../units/cell.ts";
import { isBlank, isCellError } from "../../units/cell.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { wrong } from "../../units/refusal.ts";
import { showNumber } from "../../units/show.ts";
import type { CellParameter } from "../record/record.ts";

export interface NumberRule {
  /** At least, unless `above` is set: then more than. */
  readonly from: number;
  readonly above?: true;
  readonly to?: number;
  readonly below?: true;
  readonly whole?: true;
}

/** The rule in words: "a number from 0 to 10", "a whole number of at least 1". */
export function ruleInWords(rule: NumberRule, noun: string, unit = ""): string {
  const what = rule.whole ? `a whole ${noun}` : `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;
  const end = (value: number) => `${showNumber(value, 8)}${unit}`;
  const from = rule.above ? `more than ${end(rule.from)}` : `at least ${end(rule.from)}`;
  if (rule.to === undefined) return `${what} of ${from}`;
  return `${what} of ${from} and ${rule.below ? "less than" : "at most"} ${end(rule.to)}`;
}

export function keepsRule(value: number, rule: NumberRule): boolean {
  if (!Number.isFinite(value) || (rule.whole && !Number.isInteger(value))) return false;
  if (rule.above ? value <= rule.from : !atLeast(value, rule.from)) return false;
  return (
    rule.to === undefined ||
    (rule.below ? value < rule.to && !(atLeast(value, rule.to) && value >= rule.to) : atMost(value, rule.to))
  );
}

/** A number from a cell, or undefined where it holds none. Booleans and dates are not numbers here. */
export function readNumber(given: CellValue, name: string, rule: NumberRule, noun = "number", hint?: string): number {
  if (isBlank(given)) throw wrong(name, "given", given, hint);
  const value = typeof given === "string" ? parseNumber(given) : given;
  if (value === "ambiguous")
    throw wrong(name, ruleInWords(rule, noun), given, "write 1234 or 1.234: the comma could mean either");
  if (typeof value !== "number" || isCellError(given) || !keepsRule(value, rule))
    throw wrong(name, ruleInWords(rule, noun), given, hint);
  return value;
}

interface NumberOptions<D> {
  readonly description: string;
  readonly rule: NumberRule;
  readonly noun?: string;
  readonly hint?: string;
  readonly fallback?: D;
}

export function number(options: NumberOptions<never>): CellParameter<number>;
export function number<D extends number | undefined>(
  options: NumberOptions<D> & { fallback: D },
): CellParameter<number | D>;
export function number<D>(options: NumberOptions<D>): CellParameter<number | D> {
  const optional = "fallback" in options;
  return {
    shape: "cell",
    type: options.rule.whole ? "whole number" : "number",
    description: options.description,
    optional,
    default: (options.fallback ?? null) as CellValue,
    read: (given, name) =>
      optional && isBlank(given)
        ? (options.fallback as D)
        : readNumber(given, name, options.rule, options.noun, options.hint),
  };
}
