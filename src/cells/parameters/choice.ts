/** One word out of a list. Case and outer blanks do not matter. */

import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";

export function readChoice<W extends string>(given: CellValue, name: string, words: readonly W[], hint?: string): W {
  const folded = typeof given === "string" ? given.trim().replace(/\s+/g, " ").toLowerCase() : undefined;
  const found = words.find((word) => word.toLowerCase() === folded);
  if (found === undefined)
    throw wrong(name, isBlank(given) ? "given" : `one of ${words.map((word) => `"${word}"`).join(", ")}`, given, hint);
  return found;
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
