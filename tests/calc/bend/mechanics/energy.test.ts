import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BendSetup, bendSetup } from "../../../../src/calc/bend/mechanics/bend-setup.ts";
import { gaussRule } from "../../../../src/calc/bend/mechanics/gauss.ts";
import { type LoadedPose, loadedPose } from "../../../../src/calc/bend/mechanics/loaded-pose.ts";
import { bendInput } from "./shop-input.ts";

// Principle of virtual work: what the ram puts in is stored or dissipated in bending and rubbed off at the shoulders.
function bendingWork(setup: BendSetup, pose: LoadedPose): number {
  const { path, arm } = pose;
  const sinFriction = Math.sin(setup.frictionAngle);
  const workPerLength = (curvature: number, moment: number, complementary: number) =>
    curvature * moment - complementary;
  let work = 0;
  for (let i = 0; i < path.moment.length; i++) {
    const sinPsi = path.complementary[i]! / arm.reaction - sinFriction;
    const ds = path.momentStep[i]! / (arm.reaction * Math.sqrt(1 - sinPsi ** 2));
    work += workPerLength(path.curvature[i]!, path.moment[i]!, path.complementary[i]!) * ds;
  }
  const { curvature, moment, complementary } = path.end;
  work += workPerLength(curvature, moment, complementary) * pose.wrapAngle * setup.noseRadius;
  return 2 * work;
}

/** Half angle between `from` and `to` where the sheet begins to wrap the nose; `to` when it does not. */
function startOfWrap(setup: BendSetup, from: number, to: number): number {
  if (loadedPose(setup, to).regime === "point" || loadedPose(setup, from).regime === "wrapped") return to;
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (loadedPose(setup, middle).regime === "point") low = middle;
    else high = middle;
  }
  return low;
}

/** Work of the ram less that of friction from half angle `from` to `to`, in one regime. */
function outerWork(setup: BendSetup, from: number, to: number): number {
  const rule = gaussRule(8);
  const h = 1e-4;
  const power = (a: number) => {
    const [before, here, after] = [loadedPose(setup, a - h), loadedPose(setup, a), loadedPose(setup, a + h)];
    const normal = here.arm.reaction * Math.cos(setup.frictionAngle);
    // The sheet's face slides over the shoulder by the contact's advance along it and by what the bend draws in.
    const slip = setup.dieShoulder + (after.halfLength - before.halfLength) / (2 * h);
    return (here.force * (after.depth - before.depth)) / (2 * h) - 2 * setup.friction * normal * slip;
  };
  let work = 0;
  const pieces = 8;
  for (let piece = 0; piece < pieces; piece++) {
    const low = from + ((to - from) * piece) / pieces;
    const width = (to - from) / pieces;
    rule.nodes.forEach((node, i) => {
      work += rule.weights[i]! * width * power(low + width * node);
    });
  }
  return work;
}

const anyBend = (friction: fc.Arbitrary<number>) =>
  fc.record({
    K: fc.double({ min: 150, max: 1600, noNaN: true }),
    n: fc.double({ min: 0.03, max: 0.5, noNaN: true }),
    E: fc.double({ min: 69e3, max: 210e3, noNaN: true }),
    V: fc.double({ min: 18, max: 60, noNaN: true }),
    nose: fc.double({ min: 0.6, max: 6, noNaN: true }),
    shoulder: fc.double({ min: 0.5, max: 4, noNaN: true }),
    mu: friction,
  });

describe("energy", () => {
  it.each([
    ["without friction", fc.constant(0), 1e-5],
    ["with friction on the shoulders", fc.double({ min: 0.02, max: 0.25, noNaN: true }), 1e-5],
  ] as const)("external work equals internal work %s", (_, friction, tolerance) => {
    fc.assert(
      fc.property(anyBend(friction), (values) => {
        const setup = bendSetup(bendInput(values));
        const from = 0.1;
        const to = Math.min(0.85, 0.9 * setup.largestHalfAngle);
        const stored = bendingWork(setup, loadedPose(setup, to)) - bendingWork(setup, loadedPose(setup, from));
        const wrap = startOfWrap(setup, from, to);
        const outer = outerWork(setup, from, wrap) + (wrap < to ? outerWork(setup, wrap, to) : 0);
        expect(Math.abs(outer / stored - 1)).toBeLessThan(tolerance);
      }),
      { numRuns: 40, seed: 5 },
    );
  });
});
