import { describe, expect, it } from "vitest";
import { judgeStack, toleranceStack } from "../../../src/calc/tolerance/stack.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";

describe("tolerance stack", () => {
  // By hand: edge 3, two bends of 2 each, and 12 of tilt (atan 0.12 over a leg of 100): worst 19, root of squares 12.69.
  const tilt = degrees((Math.atan(0.12) * 180) / Math.PI);
  const stack = toleranceStack(2, mm(100), { edge: mm(3), deduction: mm(2), angle: tilt });

  it("adds up for the worst case, and as independent deviations", () => {
    expect(stack.worst).toBeCloseTo(19, 9);
    expect(stack.expected).toBeCloseTo(Math.sqrt(9 + 4 + 4 + 144), 9);
  });

  it.each([
    [19, "holds"],
    [18.9, "at risk"],
    [12.7, "at risk"],
    [12.6, "will not hold"],
  ])("plus and minus %d: %s", (tolerance, verdict) => {
    expect(judgeStack(stack, mm(tolerance))).toBe(verdict);
  });

  it("a flat part has only its edge", () => {
    expect(toleranceStack(0, mm(500), { edge: mm(3), deduction: mm(2), angle: tilt }).worst).toBe(3);
  });
});
