import { describe, expect, it } from "vitest";
import { judgeStack, toleranceStack } from "../../../src/calc/tolerance/stack.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

describe("tolerance stack", () => {
  // By hand: edge 3, two bends of 2 each, and 12 of tilt (atan 0.12 over a leg of 100): worst 19, 2 x 2 x sqrt 0.6 shared and
  // 2 x sqrt(2 x 0.4) own: root of squares 12.876.
  const tilt = degrees((Math.atan(0.12) * 180) / Math.PI);
  const stack = toleranceStack(2, mm(100), { edge: mm(3), deduction: mm(2), angle: tilt });

  it("adds up for the worst case, and with what the bends of one sheet share", () => {
    expect(stack.worst).toBeCloseTo(19, 9);
    expect(stack.expected).toBeCloseTo(Math.sqrt(9 + 9.6 + 3.2 + 144), 9);
  });

  it("the working gives the expected deviation again from edge, shared and own parts and tilt", () => {
    const work: Working = [];
    const { expected } = toleranceStack(2, mm(100), { edge: mm(3), deduction: mm(2), angle: tilt }, work);
    const of = (symbol: string) => work.find((each) => each.symbol === symbol)!.value as number;
    expect(of("shared")).toBeCloseTo(of("bends") * Math.sqrt(of("c")) * of("one"), 9);
    expect(of("own")).toBeCloseTo(Math.sqrt(of("bends") * (1 - of("c"))) * of("one"), 9);
    expect(Math.hypot(of("edge"), of("shared"), of("own"), of("tilt"))).toBeCloseTo(expected, 9);
  });

  it.each([
    [19, "holds"],
    [18.9, "at risk"],
    [12.9, "at risk"],
    [12.8, "will not hold"],
  ])("plus and minus %d: %s", (tolerance, verdict) => {
    expect(judgeStack(stack, mm(tolerance))).toBe(verdict);
  });

  it("part of the variance is the sheet's: ten bends spread more than independent ones would, less than all together", () => {
    const one = { edge: mm(0), deduction: mm(1), angle: degrees(0) };
    const { expected, worst } = toleranceStack(10, mm(0), one);
    expect(expected).toBeCloseTo(Math.sqrt(10 * 10 * 0.6 + 10 * 0.4), 9);
    expect(expected).toBeGreaterThan(Math.sqrt(10));
    expect(expected).toBeLessThan(worst);
    expect(toleranceStack(1, mm(0), one).expected).toBeCloseTo(1, 9);
  });

  it("a flat part has only its edge", () => {
    expect(toleranceStack(0, mm(500), { edge: mm(3), deduction: mm(2), angle: tilt }).worst).toBe(3);
  });
});
