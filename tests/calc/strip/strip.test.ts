import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { correctedFraction } from "../../../src/calc/bend/strip-correction.ts";
import { bedEvenness } from "../../../src/calc/strip/bed-evenness.ts";
import { type StripRecord, shopCorrections } from "../../../src/calc/strip/shop-correction.ts";
import { stripDeduction } from "../../../src/calc/strip/strip-deduction.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { refusalOf } from "../../refusal-of.ts";

const strip = (thickness: number, blank: number, a: number, b: number, angle: number, radius: number) => ({
  thickness: mm(thickness),
  blank: mm(blank),
  flanges: [mm(a), mm(b)] as const,
  bendAngle: degrees(angle),
  tangentRadius: mm(radius),
});

describe("One strip, worked by hand", () => {
  test.each([
    // 90 degrees, t 3, r 4: BD = 50 + 50.9 - 95 = 5.9; K = ((2 x 7 x 1 - 5.9) / 1.570796 - 4) / 3 = (5.156620 - 4) / 3.
    [strip(3, 95, 50, 50.9, 90, 4), 5.9, 0.38554, 0.01838],
    // 90 degrees, t 1, r 1.2: BD = 30 + 30.05 - 58.2 = 1.85; K = (4.4 - 1.85) / 1.570796 - 1.2 = 1.623380 - 1.2.
    [strip(1, 58.2, 30, 30.05, 90, 1.2), 1.85, 0.42338, 0.05513],
    // 60 degrees, t 2, r 3: BD = 40 + 40 - 78 = 2; K = ((10 x 0.5773503 - 2) / 1.0471976 - 3) / 2 = (3.603430 - 3) / 2.
    [strip(2, 78, 40, 40, 60, 3), 2, 0.30171, 0.04135],
  ])("%j", (given, deduction, fraction, deviation) => {
    const found = stripDeduction(given);
    expect(found.deduction).toBeCloseTo(deduction, 9);
    expect(found.neutralFraction).toBeCloseTo(fraction, 4);
    // sqrt 3 x 0.05 / (A t): 0.0866025 over 4.712389, 1.570796, 2.094395.
    expect(found.deviation).toBeCloseTo(deviation, 4);
  });

  test("a sharp corner, and the least and the greatest turn that say something, are answered", () => {
    for (const [turn, radius] of [
      [90, 0],
      [10, 4],
      [170, 4],
    ] as const)
      expect(stripDeduction(strip(3, 95, 50, 50, turn, radius)).deduction).toBe(5);
  });

  test("the K found gives the deduction back, whatever the strip", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 20, max: 140, noNaN: true }),
        fc.double({ min: 0.2, max: 0.6, noNaN: true }),
        (t, r, angle, k) => {
          const turned = (angle * Math.PI) / 180;
          const deduction = 2 * (r + t) * Math.tan(turned / 2) - turned * (r + k * t);
          const found = stripDeduction(strip(t, 200 - deduction, 80, 120, angle, r));
          expect(found.neutralFraction).toBeCloseTo(k, 6);
        },
      ),
    );
  });
});

const record = (residual: number, deviation: number, more: Partial<StripRecord> = {}): StripRecord => ({
  material: "A36",
  regime: "point",
  thickness: mm(3),
  dieOpening: mm(24),
  tangentRadius: mm(4),
  measuredFraction: 0.42 + residual,
  predictedFraction: 0.42,
  deviation,
  ...more,
});

describe("The shop's correction, worked by hand", () => {
  test("three strips of 3 mm: weights 2500 each, prior 400", () => {
    // s = 0.02: c = 2500 (0.03 + 0.02 + 0.04) / (7500 + 400) = 225 / 7900; sd = 7900^-1/2.
    const [found] = shopCorrections([record(0.03, 0.02), record(0.02, 0.02), record(0.04, 0.02)]);
    expect(found!.offset).toBeCloseTo(0.028481, 6);
    expect(found!.deviation).toBeCloseTo(0.011251, 6);
    // About c: 0.001519, -0.008481, 0.011519; squares sum to 0.00020693; over 2, root.
    expect(found!.spread).toBeCloseTo(0.010172, 5);
    expect([found!.strips, found!.few, found!.slope]).toEqual([3, false, undefined]);
  });

  test("one thin strip moves little: weight 400, as much as the prior, so half of what it shows", () => {
    const [found] = shopCorrections([record(0.06, 0.05)]);
    expect(found!.offset).toBeCloseTo(0.03, 12);
    expect(found!.deviation).toBeCloseTo(800 ** -0.5, 12);
    expect([found!.few, found!.spread]).toEqual([true, undefined]);
  });

  test("unequal weights: 2500 at 0.02 and 400 at 0.05", () => {
    // c = (2500 x 0.01 + 400 x 0.05) / (2500 + 400 + 400) = 45 / 3300.
    const [found] = shopCorrections([record(0.01, 0.02), record(0.05, 0.05)]);
    expect(found!.offset).toBeCloseTo(0.0136364, 6);
  });

  test("a misread strip is left out by name", () => {
    // Against the other two: c = 2500 x 0.05 / 5400 = 0.023148, sd 5400^-1/2 = 0.013608; (0.3 - 0.023148) / hypot(0.02, 0.013608) = 11.44.
    const [found] = shopCorrections([record(0.03, 0.02), record(0.3, 0.02), record(0.02, 0.02)]);
    expect(found!.outliers).toHaveLength(1);
    expect(found!.outliers[0]!.place).toBe(2);
    expect(found!.outliers[0]!.message).toMatch(/^strip 2 gives K 0.720, 11.4 standard deviations/);
    expect(found!.offset).toBeCloseTo(125 / 5400, 9);
    expect(found!.strips).toBe(2);
  });

  test("a lone strip far outside what any shop shows is left out, and nothing is corrected", () => {
    // 0.3 / hypot(0.02, 0.05) = 5.57.
    const [found] = shopCorrections([record(0.3, 0.02)]);
    expect([found!.strips, found!.offset, found!.deviation]).toEqual([0, 0, 0.05]);
    expect(found!.outliers[0]!.message).toMatch(/5.6 standard deviations/);
  });

  test("of two far apart neither is named: only what no shop shows is", () => {
    // Against the prior alone 0.15 / hypot(0.02, 0.05) = 2.79 each; against each other they would be 6 apart.
    const [found] = shopCorrections([record(0.15, 0.02), record(-0.15, 0.02)]);
    expect([found!.strips, found!.outliers]).toEqual([2, []]);
  });

  test("materials and regimes are kept apart", () => {
    const found = shopCorrections([
      record(0.03, 0.02),
      record(-0.02, 0.02, { regime: "wrapped" }),
      record(0.01, 0.02, { material: "304" }),
    ]);
    expect(found.map((f) => [f.material, f.regime, Math.sign(f.offset)])).toEqual([
      ["A36", "point", 1],
      ["A36", "wrapped", -1],
      ["304", "point", 1],
    ]);
  });

  test("a slope in lg(r / t) from three ratios that span a factor of four, none from a factor below two", () => {
    // r / t 1, 2, 4 are lg 0, 0.30103, 0.60206; residuals 0, 0.03, 0.06: 0.03 / 0.30103 a decade, about r / t = 2.
    const spanned = [3, 6, 12].map((r, i) => record(0.03 * i, 0.02, { tangentRadius: mm(r) }));
    const [found] = shopCorrections(spanned);
    expect(found!.slope!.perDecade).toBeCloseTo(0.0996578, 6);
    expect(found!.slope!.about).toBeCloseTo(2, 9);
    // Offset 2500 x 0.09 / 7900 at r / t = 2, and a factor of two more adds 0.03.
    expect(correctedFraction(0.42, found!, 4)).toBeCloseTo(0.42 + 225 / 7900 + 0.03, 9);
    const near = [3, 4, 5.5].map((r, i) => record(0.03 * i, 0.02, { tangentRadius: mm(r) }));
    expect(shopCorrections(near)[0]!.slope).toBeUndefined();
    const gentle = [15, 18, 21].map((r, i) => record(0.03 * i, 0.02, { tangentRadius: mm(r) }));
    expect(shopCorrections(gentle)[0]!.slope).toBeUndefined();
    const twice = [3, 4, 6].map((r, i) => record(0.03 * i, 0.02, { tangentRadius: mm(r) }));
    expect(shopCorrections(twice)[0]!.slope).toBeDefined();
    const two = [3, 12, 12].map((r, i) => record(0.03 * i, 0.02, { tangentRadius: mm(r) }));
    expect(shopCorrections(two)[0]!.slope).toBeUndefined();
  });

  test("force and springback ratios are means of the strips that have them", () => {
    const [found] = shopCorrections([
      record(0.01, 0.02, { forceRatio: 1.1 }),
      record(0.02, 0.02, { forceRatio: 1.2, springbackRatio: 0.9 }),
      record(0.02, 0.02),
    ]);
    expect(found!.strength).toBeCloseTo(1.15, 12);
    expect(found!.springback).toBeCloseTo(0.9, 12);
  });

  test("more strips never widen the correction, and the order of the strips does not matter", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.05, max: 0.05, noNaN: true }), { minLength: 2, maxLength: 8 }),
        (residuals) => {
          const records = residuals.map((r) => record(r, 0.05));
          const [all] = shopCorrections(records);
          const [fewer] = shopCorrections(records.slice(1));
          expect(all!.deviation).toBeLessThan(fewer!.deviation);
          expect(shopCorrections(records.toReversed())[0]!.offset).toBeCloseTo(all!.offset, 12);
        },
      ),
    );
  });
});

describe("Is the brake true, worked by hand", () => {
  const readings = (...pairs: [number, number][]) =>
    pairs.map(([along, angle]) => ({ along: mm(along), bendAngle: degrees(angle) }));

  test("the middle opens: 90.5, 89, 90.5 over a 16 mm die", () => {
    const found = bedEvenness(readings([0, 90.5], [1500, 89], [3000, 90.5]), mm(16));
    expect([found.spread, found.worstAt]).toEqual([1.5, 1500]);
    expect(found.worstBy).toBeCloseTo(-1, 12);
    // At 90 degrees the ram moves V / 2 = 8 mm a radian, 0.139626 mm a degree; the middle lacks 1.5 degrees.
    expect(found.ramPerDegree).toBeCloseTo(0.139626, 6);
    expect(found.crown).toBeCloseTo(0.20944, 5);
    expect(found.tilt).toBeCloseTo(0, 12);
    expect(found.even).toBe(true);
  });

  test("one end opens: 91, 90, 89 is tilt alone, two degrees over the bed", () => {
    const found = bedEvenness(readings([0, 91], [1000, 90], [2000, 89]), mm(50));
    // 50 / 2 mm a radian = 0.436332 mm a degree; the far end lacks 2 degrees.
    expect(found.tilt).toBeCloseTo(0.872665, 5);
    expect(found.crown).toBeCloseTo(0, 9);
    expect(found.even).toBe(true);
  });

  test("more than two degrees from end to end is more than a plain bracket allows", () => {
    expect(bedEvenness(readings([0, 91.2], [2000, 89]), mm(50)).even).toBe(false);
  });

  test("two places tell nothing of the crowning", () => {
    expect(bedEvenness(readings([0, 90], [2000, 89]), mm(50)).crown).toBeUndefined();
  });

  test("at 120 degrees of bend the same die needs twice the ram: V / (4 sin^2 30)", () => {
    const found = bedEvenness(readings([0, 120], [1000, 120]), mm(16));
    expect(found.ramPerDegree).toBeCloseTo((16 * Math.PI) / 180, 9);
  });
});

describe("Refusals", () => {
  const at = (along: number, angle: number) => ({ along: mm(along), bendAngle: degrees(angle) });
  test.each([
    ["no thickness", () => stripDeduction(strip(0, 95, 50, 50, 90, 4)), /^thickness must be above 0/],
    ["a flat strip", () => stripDeduction(strip(3, 95, 50, 50, 0, 4)), /^bend_angle must be 10 to 170/],
    ["a turn of 9.9 degrees", () => stripDeduction(strip(3, 95, 50, 50, 9.9, 4)), /^bend_angle must be 10 to 170/],
    ["a turn of 170.1 degrees", () => stripDeduction(strip(3, 95, 50, 50, 170.1, 4)), /^bend_angle must be 10 to 170/],
    ["a blank without end", () => stripDeduction(strip(3, Infinity, 50, 50, 90, 4)), /^blank must be above 0/],
    ["a flange of nothing", () => stripDeduction(strip(3, 95, 50, 0, 90, 4)), /^flanges must be above 0/],
    ["a radius below 0", () => stripDeduction(strip(3, 95, 50, 50, 90, -0.1)), /^radius must be 0 mm or more/],
    ["a radius without end", () => stripDeduction(strip(3, 95, 50, 50, 90, Infinity)), /^radius must be 0 mm or more/],
    ["NaN radius", () => stripDeduction(strip(3, 95, 50, 50, 90, Number.NaN)), /^radius must be 0 mm or more/],
    ["NaN blank", () => stripDeduction(strip(3, Number.NaN, 50, 50, 90, 4)), /^blank must be above 0/],
    ["a strip without deviation", () => shopCorrections([record(0.1, 0)]), /^deviation of strip 1 must be above 0/],
    [
      "a force ratio of 0",
      () => shopCorrections([record(0.1, 0.02, { forceRatio: 0 })]),
      /^measured over predicted of strip 1/,
    ],
    ["one reading", () => bedEvenness([at(0, 90)], mm(16)), /^along must be angles at 2 or more/],
    [
      "readings at one place",
      () => bedEvenness([at(5, 90), at(5, 91)], mm(16)),
      /^along must be taken at different places/,
    ],
    ["no die", () => bedEvenness([at(0, 90), at(5, 91)], mm(0)), /^die_opening must be above 0/],
  ])("%s is refused", (_, run, expected) => {
    expect(refusalOf(run)).toMatch(expected);
  });
});
