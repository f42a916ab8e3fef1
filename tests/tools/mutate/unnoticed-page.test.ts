import { describe, expect, it } from "vitest";
import type { Perturbed } from "../../../src/tools/mutate/perturb.ts";
import { kindOf, unnoticedPage } from "../../../src/tools/mutate/unnoticed-page.ts";

const verdict = (file: string, value: number, noticedBy?: string): Perturbed => ({
  id: 1,
  file,
  value,
  line: `const x = ${value};`,
  noticedBy,
  usedBy: 3,
});

describe("what kind of figure it is", () => {
  it.each([
    ["src/data/x.ts", 2, "data"],
    ["src/calc/cost/x.ts", 100, "arithmetic"],
    ["src/calc/cost/x.ts", 2, "structure"],
    ["src/calc/cutting/x.ts", 1e-9, "machinery"],
  ] as const)("%s %d: %s", (file, value, kind) => {
    expect(kindOf({ file, value })).toBe(kind);
  });
});

it("the page lists what was not noticed and only counts what was", () => {
  const page = unnoticedPage([verdict("src/data/x.ts", 36, "a row"), verdict("src/data/x.ts", 58)], 900);
  expect(page).toContain("## data: 1 of 2");
  expect(page).toContain("- src/data/x.ts: 58 in `const x = 58;`");
  expect(page).not.toContain(": 36 in");
});
