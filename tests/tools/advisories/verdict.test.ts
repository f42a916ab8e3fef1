import { describe, expect, it } from "vitest";
import { verdictOf } from "../../../src/tools/advisories/verdict.ts";

const answer = (vulnerabilities: Record<string, number>) => JSON.stringify({ metadata: { vulnerabilities } });

describe("the known-advisory check", () => {
  it.each([
    [answer({ low: 0, high: 0, total: 0 }), "none known", 0],
    [answer({ low: 1, high: 2, total: 3 }), "3 (1 low, 2 high)", 1],
    [JSON.stringify({ message: "405 - POST https://somewhere.invalid/x" }), "not run; 405 - POST the registry", 2],
    [JSON.stringify({ error: { summary: "no connection" } }), "not run; no connection", 2],
    ["{}", "not run; no answer", 2],
    ["", "not run; no answer that can be read", 2],
  ])("%s", (output, words, code) => {
    const verdict = verdictOf(output);
    expect(verdict.line).toContain(words);
    expect(verdict.code).toBe(code);
  });
});
