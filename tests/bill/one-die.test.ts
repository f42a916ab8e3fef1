/** The bill of a shop that owns one die: every line understood, few stops, and no view that contradicts another. */
import { describe, expect, it } from "vitest";
import { contradictions, type Views } from "./contradictions.ts";
import { oneDieBill } from "./one-die-bill.ts";
import { ask, NAMES } from "./views.ts";

const views = Object.fromEntries(NAMES.map((name) => [name, ask(name, oneDieBill)])) as unknown as Views;
const checks = ask("BILL.CHECK", oneDieBill);
if (typeof checks === "string") throw new Error(checks);

describe("45 lines in a shop with one die", () => {
  it("are all understood", () => {
    expect(checks.map(({ Part }) => Part)).toEqual(Array.from({ length: 45 }, (_, i) => `A${i + 1}`));
    expect(checks.filter(({ Sentence }) => /must (?:be|have)/.test(String(Sentence)))).toEqual([]);
  });

  it("stop where the die or the brakes cannot do it, and hardly anywhere else", () => {
    const stopped = checks.filter(({ Status }) => Status === "stop").map(({ Part }) => Part);
    expect(stopped.length).toBeLessThanOrEqual(16);
    // A flange of 1 in, a hole at 1/4 in, 130 in on beds of 120, 1/4 in over 110 in, 1/2 in plate, turns past the die's face.
    expect(stopped).toEqual(expect.arrayContaining(["A30", "A31", "A32", "A33", "A34", "A40", "A41"]));
  });

  it("contradict each other nowhere", () => {
    expect(contradictions(views, { lines: 45, hasStock: true })).toEqual([]);
  });
});
