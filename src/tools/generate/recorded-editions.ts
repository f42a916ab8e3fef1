/**
 * A released edition of the materials is never edited: a workbook that names it keeps its numbers. tests/recorded/
 * editions.json holds a hash of each; `npm run record -- --release` adds the newest, and no run changes one that stands there.
 */
import { createHash } from "node:crypto";
import type { Edition } from "../../data/materials/material.ts";

export type RecordedEditions = Readonly<Record<string, string>>;

export const EDITIONS_FILE = "tests/recorded/editions.json";

const editionHash = (edition: Edition): string =>
  createHash("sha256")
    .update(JSON.stringify(sorted(edition)))
    .digest("hex");

/** What stands there, and at a release what is new. */
export function renewedEditions(
  recorded: RecordedEditions,
  editions: readonly Edition[],
  { isRelease }: { readonly isRelease: boolean },
): RecordedEditions {
  const current = Object.fromEntries(editions.map((edition) => [edition.name, editionHash(edition)]));
  for (const [name, hash] of Object.entries(recorded))
    if (current[name] !== hash)
      throw new Error(`edition ${name} is released: it must stay as it is; put the change into a new edition`);
  return isRelease ? current : recorded;
}

/** Keys in alphabetical order: the order of writing does not count. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, part]) => [key, sorted(part)]),
  );
}
