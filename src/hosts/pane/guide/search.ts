/** Finds functions by what a person types: every word must occur, and a word of the name weighs most. */
import type { GuideEntry } from "./entry.ts";

const fold = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ");

/** Higher is closer; 0 where a word is nowhere. */
function closeness(entry: GuideEntry, words: readonly string[]): number {
  const name = fold(entry.name);
  const question = fold(entry.question);
  const rest = fold(
    [...entry.arguments.flatMap((one) => [one.name, one.description]), entry.answers, entry.source].join(" "),
  );
  let sum = 0;
  for (const word of words) {
    const weight = name.includes(word) ? 9 : question.includes(word) ? 3 : rest.includes(word) ? 1 : 0;
    if (weight === 0) return 0;
    sum += weight;
  }
  return sum;
}

/** The entries that answer the words, closest first; all of them, in their own order, where nothing was typed. */
export function search(entries: readonly GuideEntry[], typed: string): readonly GuideEntry[] {
  const words = fold(typed).split(" ").filter(Boolean);
  if (words.length === 0) return entries;
  return entries
    .map((entry) => ({ entry, weight: closeness(entry, words) }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ entry }) => entry);
}
