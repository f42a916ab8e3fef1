/** Tools drawn from a die and a punch of the tables: shapes a machine could be, by plane geometry. */
import { describe, expect, test } from "vitest";
import { plainPress } from "../../../../src/calc/bend/order/plain-press.ts";
import { crossesItself, type Outline } from "../../../../src/calc/bend/order/solid.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { area } from "./sample-press.ts";

const die = { name: "V", opening: mm(20), angle: degrees(90), shoulder: mm(2) };
const xs = (points: Outline) => points.map(([x]) => x);
const ys = (points: Outline) => points.map(([, y]) => y);

describe.each([
  ["a nosed punch", { name: "P", nose: mm(3), angle: degrees(60) }],
  ["a sharp punch", { name: "P", nose: mm(0), angle: degrees(30) }],
  ["no punch given", undefined],
])("%s over a square V of 20 mm", (_, punch) => {
  // Drawn anew within each test: what is remembered, or drawn while the tests are collected, hides a change of the drawing.
  const drawn = () => plainPress({ ...die }, punch);
  test.each(["punch", "ram", "die", "bed", "finger"] as const)("the %s is solid and does not cross itself", (tool) => {
    const press = drawn();
    expect(area(press[tool])).toBeGreaterThan(1);
    expect(crossesItself(press[tool])).toBe(false);
  });

  test.each(["punch", "ram", "die", "bed"] as const)("the %s is the same left and right", (tool) => {
    const press = drawn();
    const sorted = (points: Outline, side: 1 | -1) =>
      points.map(([x, y]) => `${(side * x + 0).toFixed(6)} ${y.toFixed(6)}`.replace("-0.000000", "0.000000")).sort();
    expect(sorted(press[tool], -1)).toEqual(sorted(press[tool], 1));
  });

  test("they stand one on the other: bed, die, sheet line, punch, ram", () => {
    const press = drawn();
    expect(Math.max(...ys(press.bed))).toBe(Math.min(...ys(press.die)));
    // 20 mm of a square V are 10 mm deep, and metal is left below.
    expect(Math.min(...ys(press.die))).toBeLessThan(-20);
    expect(Math.max(...ys(press.die))).toBeCloseTo(0, 9);
    expect(Math.min(...ys(press.punch))).toBeCloseTo(0, 9);
    expect(Math.max(...ys(press.punch))).toBe(Math.min(...ys(press.ram)));
    expect(Math.max(...xs(press.ram))).toBeGreaterThanOrEqual(Math.max(...xs(press.punch)));
    expect(Math.max(...xs(press.bed))).toBe(Math.max(...xs(press.die)));
  });
});

describe("what the tables state is drawn", () => {
  const P = { name: "P", nose: mm(1), angle: degrees(78) };
  const span = (points: Outline, at: number) => {
    const crossings = points.flatMap(([x, y], i): number[] => {
      const [u, v] = points[(i + 1) % points.length]!;
      return y > at !== v > at ? [x + ((u - x) * (at - y)) / (v - y)] : [];
    });
    return [Math.min(...crossings), Math.max(...crossings)];
  };

  test("a body of 40, 200 high, and a block of 60 by 90", () => {
    const drawn = plainPress(
      { ...die, blockWidth: mm(60), blockHeight: mm(90) },
      { ...P, bodyWidth: mm(40), height: mm(200) },
    );
    expect(span(drawn.punch, 150)).toEqual([-20, 20]);
    expect(Math.max(...ys(drawn.punch))).toBe(200);
    expect([Math.min(...xs(drawn.die)), Math.max(...xs(drawn.die)), Math.min(...ys(drawn.die))]).toEqual([
      -30, 30, -90,
    ]);
  });

  test("a gooseneck's throat is as far behind the tip's line and its mouth as high as stated", () => {
    const neck = { ...P, bodyWidth: mm(30), height: mm(200), reliefDepth: mm(20), reliefWidth: mm(140) };
    const { punch } = plainPress(die, neck);
    expect(crossesItself(punch)).toBe(false);
    // The lip stands 6 before the line; from its flank's end the mouth is 140 high.
    const lip = Math.max(...punch.filter(([x]) => x === -6).map(([, y]) => y));
    expect(span(punch, lip + 70)).toEqual([20, 50]);
    expect(span(punch, lip + 139)[0]).toBeLessThan(-13);
    expect(span(punch, lip + 145)[0]).toBe(-15);
    expect(Math.max(...ys(punch))).toBe(200);
  });

  test.each([
    [0, 10, 1],
    [60, 30, 400],
    [5, 2, 30],
    [200, 1000, 50],
    [25, undefined, undefined],
  ])("a relief of %d by %s in a punch of height %s is still a shape", (depth, width, height) => {
    const neck = { ...P, reliefDepth: mm(depth), reliefWidth: width && mm(width), height: height && mm(height) };
    const { punch } = plainPress(die, neck as never);
    expect(crossesItself(punch)).toBe(false);
    expect(Math.min(...ys(punch))).toBeCloseTo(0, 9);
  });

  test("daylight less the tools is what it opens, and its two ends are the stroke", () => {
    const tools = [
      { ...die, blockHeight: mm(90) },
      { ...P, height: mm(200) },
    ] as const;
    const { openHeight, stroke } = plainPress(...tools, { daylight: mm(450), shutHeight: mm(250) });
    expect([openHeight, stroke]).toEqual([160, 200]);
    expect(plainPress(...tools, { daylight: mm(450), stroke: mm(100) }).stroke).toBe(100);
  });

  test("a stroke that nobody stated is never too short, whatever the die opens", () => {
    for (const opening of [6, 50, 127, 300]) {
      const wide = { ...die, opening: mm(opening) };
      const { openHeight, stroke } = plainPress(wide, P);
      expect(stroke - openHeight).toBeGreaterThanOrEqual(opening / 2 - 1e-9);
    }
  });
});
