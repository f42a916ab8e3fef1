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
