/** Every fact that src/data exports, with the way to it. */
import type { Fact } from "../../src/data/fact.ts";
import { filesBelow, root } from "../house-rules/sources.ts";

export interface FoundFact {
  readonly path: string;
  readonly fact: Fact;
}

export async function factsOf(): Promise<FoundFact[]> {
  const found: FoundFact[] = [];
  for (const { path } of filesBelow("src/data"))
    found.push(...inside({ ...((await import(`${root}/${path}`)) as object) }, path));
  return found;
}

function inside(value: unknown, path: string): FoundFact[] {
  if (typeof value !== "object" || value === null) return [];
  if ("mark" in value && "value" in value) return [{ path, fact: value as unknown as Fact }];
  return Object.entries(value).flatMap(([key, part]) => inside(part, `${path} ${key}`));
}
