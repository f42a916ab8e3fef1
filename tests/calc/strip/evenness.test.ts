/** Line and bow of a bed against the normal equations solved here, and what is refused. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AirBendInput } from "../../../src/calc/bend/mechanics/air-bend-input.ts";
import { calibrated } from "../../../src/calc/bend/strip-correction.ts";
import { bedEvenness } from "../../../src/calc/strip/bed-evenness.ts";
import { type StripRecord, shopCorrections } from "../../../src/calc/strip/shop-correction.ts";
import { degrees, megapascals, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const readings = (...pairs: (readonly [number, number])[]) =>
  pairs.map(([along, angle]) => ({ along: mm(along), bendAngle: degrees(angle) }));

/** Coefficients of 1, x, x^2 by Gaussian elimination on the normal equations. */
function parabola(x: readonly number[], y: readonly number[]): number[] {
  const powers = (value: number) => [1, value, value * value];
  const rows = [0, 1, 2].map((i) => [
    ...[0, 1, 2].map((j) => x.reduce((sum, v) => sum + powers(v)[i]! * powers(v)[j]!, 0)),
    x.reduce((sum, v, k) => sum + powers(v)[i]! * y[k]!, 0),
  ]);
  for (let i = 0; i < 3; i++) {
    const pivot = rows.slice(i).reduce((a, b) => (Math.abs(b[i]!) > Math.abs(a[i]!) ? b : a));
    rows.splice(rows.indexOf(pivot), 1);
    rows.splice(i, 0, pivot);
    for (let k = 0; k < 3; k++) {
      if (k === i) continue;
      const factor = rows[k]![i]! / pivot[i]!;
      rows[k] = rows[k]!.map((value, j) => value - factor * pivot[j]!);
    }
  }
  return rows.map((row, i) => row[3]! / row[i]!);
}

describe("a bed that leans and bows", () => {
  it("tilt and crown are the parabola's, whatever the places", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 3, maxLength: 8 }),
        fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 8, maxLength: 8 }),
        (places, off) => {
          const given = places.map((place, i) => [place * 50, 91 + off[i]! / 20] as const);
          const found = bedEvenness(readings(...given), mm(50));
          const [low, high] = [Math.min(...places), Math.max(...places)];
          const x = places.map((place) => (2 * place - low - high) / (high - low));
          const [, slope, bow] = parabola(
            x,
            given.map(([, angle]) => angle),
          );
          const mean = given.reduce((sum, [, angle]) => sum + angle, 0) / given.length;
          const perDegree = ((50 / (4 * Math.sin(((180 - mean) * Math.PI) / 360) ** 2)) * Math.PI) / 180;
          expect(found.ramPerDegree).toBeCloseTo(perDegree, 9);
          expect(found.tilt).toBeCloseTo(-2 * slope! * perDegree, 6);
          expect(found.crown).toBeCloseTo(bow! * perDegree, 6);
        },
      ),
    );
  });

  it("two places have a tilt and no crown; the first of the worst is named", () => {
    // 1 degree more at the far end of 1000 mm: half a degree a half, V / 2 a radian near 90 degrees.
    const two = bedEvenness(readings([0, 90], [1000, 91]), mm(20));
    const perDegree = ((20 / (4 * Math.sin((89.5 * Math.PI) / 360) ** 2)) * Math.PI) / 180;
    expect(two.tilt).toBeCloseTo(-perDegree, 9);
    expect(two.crown).toBeUndefined();
    expect(two.worstAt).toBe(0);
    // Three strips at two places are no parabola either.
    const three = bedEvenness(readings([0, 90], [0, 90], [1000, 91]), mm(20));
    expect(three.crown).toBeUndefined();
    expect(three.tilt).toBeCloseTo(
      -((20 / (4 * Math.sin(((180 - three.mean) * Math.PI) / 360) ** 2)) * Math.PI) / 180,
      9,
    );
  });

  it.each([
    [
      "a place that is none",
      () => bedEvenness(readings([0, 90], [Number.NaN, 90]), mm(20)),
      /^place along the bed must be a number/,
    ],
    ["no tolerance", () => bedEvenness(readings([0, 90], [9, 90]), mm(20), degrees(0)), /^tolerance must be above 0/],
    ["an endless tolerance", () => bedEvenness(readings([0, 90], [9, 90]), mm(20), degrees(Infinity)), /^tolerance/],
    ["an endless die", () => bedEvenness(readings([0, 90], [9, 90]), mm(Infinity)), /^die_opening/],
    ["an angle beyond reading", () => bedEvenness(readings([0, 90], [9, 171]), mm(20)), /171/],
  ])("refuses %s", (_, ask, words) => {
    expect(ask).toThrow(expect.objectContaining({ message: expect.stringMatching(words) }));
  });
});

describe("a shop's correction", () => {
  const record = (changed: Partial<StripRecord> = {}): StripRecord => ({
    material: "A36",
    regime: "point",
    thickness: mm(3),
    dieOpening: mm(24),
    tangentRadius: mm(5),
    measuredFraction: 0.44,
    predictedFraction: 0.42,
    deviation: 0.01,
    ...changed,
  });

  it.each([
    ["deviation", { deviation: 0 }, /^deviation of strip 2 must be above 0/],
    ["deviation", { deviation: Infinity }, /^deviation of strip 2/],
    ["K", { measuredFraction: Number.NaN }, /^K of strip 2 must be a number/],
    ["K", { predictedFraction: Infinity }, /^K of strip 2/],
    ["ratio", { forceRatio: 0 }, /^measured over predicted of strip 2 must be above 0/],
    ["ratio", { springbackRatio: Infinity }, /^measured over predicted of strip 2/],
    ["radius", { tangentRadius: mm(0) }, /^radius of strip 2 must be above 0 mm/],
    ["radius", { thickness: mm(0) }, /^radius of strip 2/],
  ] as const)("refuses a strip's %s", (_, changed, words) => {
    let said: unknown;
    try {
      shopCorrections([record(), record(changed)]);
    } catch (problem) {
      said = problem;
    }
    expect(said).toBeInstanceOf(Refusal);
    expect((said as Refusal).message).toMatch(words);
  });

  it("two strips have a spread of one degree of freedom, one has none", () => {
    expect(shopCorrections([record()])[0]!.spread).toBeUndefined();
    const [pair] = shopCorrections([record({ measuredFraction: 0.43 }), record({ measuredFraction: 0.45 })]);
    // Residuals 0.01 and 0.03 about an offset of 2e4 x 0.02 / (2e4 + 400).
    const offset = (2e4 * 0.02) / (2e4 + 400);
    expect(pair!.offset).toBeCloseTo(offset, 12);
    expect(pair!.spread).toBeCloseTo(Math.hypot(0.01 - offset, 0.03 - offset), 12);
  });

  it("is applied to strength, and to the modulus so that springback follows", () => {
    const input = {
      hardening: { strength: megapascals(500), exponent: 0.2 },
      modulus: megapascals(200_000),
    } as AirBendInput;
    const line = { material: "A36", regime: "point", offset: 0, slope: undefined } as const;
    const found = calibrated(input, { ...line, strength: 1.1, springback: 1.25 });
    expect(found.hardening).toEqual({ strength: 550, exponent: 0.2 });
    expect(found.modulus).toBeCloseTo((200_000 * 1.1) / 1.25, 6);
    const known = calibrated(input, { ...line, strength: undefined, springback: undefined });
    expect(known).toEqual(input);
  });
});
