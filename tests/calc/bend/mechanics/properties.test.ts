import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AirBend } from "../../../../src/calc/bend/mechanics/air-bend.ts";
import { airBendAtStroke } from "../../../../src/calc/bend/mechanics/air-bend-at-stroke.ts";
import { airBendToAngle } from "../../../../src/calc/bend/mechanics/air-bend-to-angle.ts";
import { bendSetup } from "../../../../src/calc/bend/mechanics/bend-setup.ts";
import { loadedPose } from "../../../../src/calc/bend/mechanics/loaded-pose.ts";
import { FORCE_FACTOR } from "../../../../src/calc/bend/mechanics/punch-tip.ts";
import { degrees } from "../../../../src/units/quantity.ts";
import { Refusal } from "../../../../src/units/refusal.ts";
import { bendInput } from "./shop-input.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const toAngle = (values: Parameters<typeof bendInput>[0], angle: number) =>
  airBendToAngle(bendInput(values), degrees(angle));

/** An ordinary shop's bends: none of them is refused. */
const shopBend = fc
  .record({
    K: between(250, 1400),
    n: between(0.05, 0.45),
    E: between(69e3, 207e3),
    t: between(0.9, 6),
    ratio: between(6, 14),
    noseRatio: between(0.3, 2),
    mu: between(0, 0.15),
  })
  .map(({ ratio, noseRatio, ...v }) => ({ ...v, V: ratio * v.t, nose: noseRatio * v.t, shoulder: 0.7 * v.t }));

describe("laws every bend obeys", () => {
  it("doubling every length leaves angles alone, doubles force per width and every length", () => {
    fc.assert(
      fc.property(shopBend, between(20, 110), (v, angle) => {
        const one = toAngle(v, angle);
        const two = toAngle({ ...v, t: 2 * v.t, V: 2 * v.V, nose: 2 * v.nose, shoulder: 2 * v.shoulder }, angle);
        for (const same of ["loadedAngle", "springback", "finalAngle"] as const) {
          expect(two[same] / one[same]).toBeCloseTo(1, 6);
        }
        for (const doubled of [
          "peakForce",
          "force",
          "stroke",
          "centerRadius",
          "tangentRadius",
          "bendDeduction",
        ] as const) {
          expect(two[doubled] / one[doubled]).toBeCloseTo(2, 5);
        }
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it("strength and modulus raised together leave shapes alone and raise the force as much", () => {
    fc.assert(
      fc.property(shopBend, (v) => {
        const one = toAngle({ ...v, E: 70e3 }, 90);
        const two = toAngle({ ...v, K: 2 * v.K, E: 140e3 }, 90);
        expect(two.peakForce / one.peakForce).toBeCloseTo(2, 6);
        expect(two.bendDeduction / one.bendDeduction).toBeCloseTo(1, 6);
      }),
      { numRuns: 40, seed: 2 },
    );
  });

  const rises: ReadonlyArray<readonly [string, keyof AirBend, (v: Values) => Values, 1 | -1]> = [
    ["force rises with thickness", "peakForce", (v) => ({ ...v, t: v.t * 1.05 }), 1],
    ["force rises with strength", "peakForce", (v) => ({ ...v, K: v.K * 1.05 }), 1],
    ["force falls with die opening", "peakForce", (v) => ({ ...v, V: v.V * 1.05 }), -1],
    ["springback rises with strength", "springback", (v) => ({ ...v, K: v.K * 1.05 }), 1],
    ["springback rises with die opening over thickness", "springback", (v) => ({ ...v, V: v.V * 1.05 }), 1],
    ["springback falls with the modulus", "springback", (v) => ({ ...v, E: v.E * 1.05 }), -1],
    ["the stroke rises with die opening", "stroke", (v) => ({ ...v, V: v.V * 1.05 }), 1],
  ];
  type Values = { K: number; n: number; E: number; t: number; V: number; nose: number; shoulder: number; mu: number };
  it.each(rises)("%s", (_, figure, change, sign) => {
    fc.assert(
      fc.property(shopBend, (v) => {
        const before = toAngle(v, 90)[figure] as number;
        const after = toAngle(change(v), 90)[figure] as number;
        expect((after - before) * sign).toBeGreaterThan(0);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it("the stroke rises with the wanted angle", () => {
    fc.assert(
      fc.property(shopBend, between(5, 100), (v, angle) => {
        expect(toAngle(v, angle + 2).stroke).toBeGreaterThan(toAngle(v, angle).stroke);
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it("the stroke for an angle gives that angle back", () => {
    fc.assert(
      fc.property(shopBend, between(5, 110), (v, angle) => {
        const { stroke } = toAngle(v, angle);
        expect(Math.abs(airBendAtStroke(bendInput(v), stroke).finalAngle - angle)).toBeLessThan(1e-6);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it("the peak force is the largest of 300 along the stroke, to a thousandth", () => {
    fc.assert(
      fc.property(shopBend, between(10, 110), (v, angle) => {
        const bend = toAngle(v, angle);
        const setup = bendSetup(bendInput(v));
        const half = (bend.loadedAngle * Math.PI) / 360;
        let largest = 0;
        for (let i = 1; i <= 300; i++) largest = Math.max(largest, loadedPose(setup, (half * i) / 300).force);
        expect(Math.abs(bend.peakForce / (FORCE_FACTOR * largest) - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 15, seed: 7, endOnFailure: true },
    );
  });

  it("the middle line is no shorter than the chord and no longer than both legs around it", () => {
    fc.assert(
      fc.property(shopBend, between(10, 110), between(1, 3), (v, angle, wider) => {
        const input = bendInput({ ...v, nose: wider * v.nose });
        const setup = bendSetup(input);
        const pose = loadedPose(setup, Math.min((angle * Math.PI) / 360, 0.95 * setup.largestHalfAngle));
        const shift = (setup.friction * input.thickness) / 2;
        const sin = Math.sin(pose.halfAngle);
        const cos = Math.cos(pose.halfAngle);
        const x = setup.shoulderCenter - setup.shoulderRadius * sin + shift * cos;
        const y = pose.depth - input.thickness / 2 - setup.dieShoulder + setup.shoulderRadius * cos + shift * sin;
        expect(pose.halfLength).toBeGreaterThan(Math.hypot(x, y) * 0.9999);
        expect(pose.halfLength).toBeLessThan((x + y) * 1.0001);
      }),
      { numRuns: 60, seed: 9 },
    );
  });

  it("whatever is asked, the answer is finite and positive or a refusal in the one grammar", () => {
    const anything = fc.record({
      K: between(150, 1600),
      n: between(0.03, 0.5),
      E: between(69e3, 210e3),
      t: between(0.5, 12),
      ratio: between(4, 25),
      noseRatio: between(0.2, 6),
      shoulder: between(0.5, 10),
      dieAngle: between(30, 90),
      mu: between(0, 0.25),
    });
    fc.assert(
      fc.property(anything, between(5, 150), ({ ratio, noseRatio, ...v }, angle) => {
        try {
          const { regime, solution: _, ...figures } = toAngle({ ...v, V: ratio * v.t, nose: noseRatio * v.t }, angle);
          expect(["point", "wrapped"]).toContain(regime);
          for (const value of Object.values(figures)) {
            expect(Number.isFinite(value)).toBe(true);
            expect(value).toBeGreaterThan(0);
          }
          expect(figures.centerRadius).toBeLessThanOrEqual(figures.tangentRadius);
          expect(figures.force).toBeLessThanOrEqual(figures.peakForce);
        } catch (reason) {
          if (!(reason instanceof Refusal)) throw reason;
          expect(reason.message).toMatch(/^\w+ must be .+; got .+/);
        }
      }),
      { numRuns: 1000, seed: 8 },
    );
  });
});
