/** One word out of a list. Case and outer blanks do not matter. */

import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";

/** A longer list of words is not read to the end. */
const MOST_SAID = 10;

export function readChoice<W extends string>(given: CellValue, name: string, words: readonly W[], hint?: string): W {
  const folded = typeof given === "string" ? given.trim().replace(/\s+/g, " ").toLowerCase() : undefined;
  const found = words.find((word) => word.toLowerCase() === folded);
  if (found !== undefined) return found;
  const said = (some: readonly W[]) => some.map((word) => `"${word}"`).join(", ");
  if (isBlank(given)) throw wrong(name, "given", given, hint);
  if (words.length <= MOST_SAID) throw wrong(name, `one of ${said(words)}`, given, hint);
  const near = `nearest is "${nearest(folded ?? "", words)}"`;
  throw wrong(name, `one of ${words.length} words such as ${said(words.slice(0, 3))}`, given, hint ?? near);
}

interface ChoiceOptions<W extends string> {
  readonly description: string;
  readonly words: readonly W[];
}

export function choice<W extends string>(options: ChoiceOptions<W> & { fallback?: NoInfer<W> }): CellParameter<W>;
export function choice<W extends string>(
  options: ChoiceOptions<W> & { fallback: undefined },
): CellParameter<W | undefined>;
export function choice<W extends string>(
  options: ChoiceOptions<W> & { fallback?: W | undefined },
): CellParameter<W | undefined> {
  const optional = "fallback" in options;
  return {
    shape: "cell",
    type: options.words.map((word) => `"${word}"`).join(" | "),
    description: options.description,
    optional,
    default: options.fallback ?? null,
    read: (given, name) => (optional && isBlank(given) ? options.fallback : readChoice(given, name, options.words)),
  };
}
