/** Tools between two flanges that stand at the ends of a bend. Subset sums by hand. */
import { describe, expect, it } from "vitest";
import { boxFinding, longestUpTo } from "../../../../src/calc/bend/check/box.ts";
import { mm } from "../../../../src/units/quantity.ts";

const sections = [100, 50, 20, 10, 5].map(mm);
const box = (inside: number, given: Partial<Parameters<typeof boxFinding>[0]> = {}) =>
  boxFinding({ inside: mm(inside), name: "P", length: undefined, sections, ...given });

describe("a box", () => {
  it.each([
    [5, 5],
    [9.99, 5],
    [30, 30],
    [49.9, 35],
    [184.9, 180],
    [1000, 185],
    [0, 0],
    [-3, 0],
  ])("the longest of 100, 50, 20, 10 and 5 within %d is %d", (most, longest) =>
    expect(longestUpTo(sections, mm(most))).toBeCloseTo(longest, 9),
  );

  it("takes what is 1/16 to 1/2 in shorter than its inside", () => {
    // 180 goes in from 181.5875 on, and is long enough up to 192.7; without it there are 100.
    const two = { sections: [100, 80].map(mm) };
    expect(box(181.5, two)).toMatchObject({
      about: "room",
      kind: "box",
      status: "check",
      figure: expect.closeTo(100, 6),
    });
    expect(box(181.6, two)).toBeUndefined();
    expect(box(192.7, two)).toBeUndefined();
    expect(box(192.8, two)).toMatchObject({ kind: "box", figure: expect.closeTo(180, 6), beside: 192.8 });
  });

  it("a tool whose whole length goes in needs no sections; one whose sections are not listed is asked about", () => {
    expect(box(190, { sections: undefined, length: mm(185) })).toBeUndefined();
    expect(box(190, { sections: undefined, length: mm(1000) })).toMatchObject({
      kind: "box, none listed",
      status: "check",
      figure: 190,
      beside: expect.closeTo(177.3, 6),
      limit: expect.closeTo(188.4125, 6),
    });
    expect(box(190, { sections: [] })).toMatchObject({ kind: "box", figure: 0 });
  });
});
