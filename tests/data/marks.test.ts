import { describe, expect, it } from "vitest";
import { factsOf } from "./all-facts.ts";

describe("marks of facts", () => {
  it("one source has one mark, wherever it is cited", async () => {
    const marks = new Map<string, Set<string>>();
    for (const { fact } of await factsOf())
      marks.set(fact.source, (marks.get(fact.source) ?? new Set()).add(fact.mark));
    const several = [...marks].filter(([, found]) => found.size > 1);
    expect(several.map(([source, found]) => `${source}: ${[...found].join(", ")}`)).toEqual([]);
  });
});
