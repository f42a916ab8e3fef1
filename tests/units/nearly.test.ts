import { describe, expect, it } from "vitest";
import { atLeast, atMost } from "../../src/units/nearly.ts";

describe("limits forgive the last bits of a unit conversion", () => {
  it("ten pieces of 0.2 in are not shorter than 2 in", () => {
    const sum = Array.from({ length: 10 }, () => 0.2 * 25.4).reduce((a, b) => a + b, 0);
    expect(atLeast(sum, 2 * 25.4)).toBe(true);
    expect(atMost(sum, 2 * 25.4)).toBe(true);
  });

  it("a thousandth of a millimeter is not forgiven", () => {
    expect(atLeast(50.799, 50.8)).toBe(false);
    expect(atMost(50.801, 50.8)).toBe(false);
  });

  it("nothing is at least NaN", () => {
    expect(atLeast(Number.NaN, 1)).toBe(false);
    expect(atMost(1, Number.NaN)).toBe(false);
  });
});

describe("at the very edge of the slack", () => {
  it("what is short by exactly the slack still counts, by twice that no more", () => {
    expect(atLeast(1 - 1e-9, 1)).toBe(true);
    expect(atLeast(1 - 2e-9, 1)).toBe(false);
  });
  it("the larger of the two is the measure, however small the other", () => {
    expect(atLeast(-1e-9, 0)).toBe(false);
    expect(atLeast(1e6 - 5e-4, 1e6)).toBe(true);
    expect(atLeast(1e6 - 5e-3, 1e6)).toBe(false);
    expect(atLeast(0, 0)).toBe(true);
  });
});
