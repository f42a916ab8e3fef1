import * as polyclip from "polyclip-ts";
import { describe, expect, test } from "vitest";
import { poseAtHit } from "../../../../src/calc/bend/order/pose.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import {
  type Outline,
  shadowAbove,
  shadowBehind,
  shadowBelow,
  type ToolName,
} from "../../../../src/calc/bend/order/solid.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { deductionFor, random, randomPart } from "./random-part.ts";
import { outline, samplePress } from "./sample-press.ts";

type Ring = [number, number][];
const ring = (points: Outline | Ring): Ring => points.map(([x, y]) => [x, y]);
const area = (points: Outline | Ring): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      return sum + x * v - u * y;
    }, 0),
  ) / 2;
const overlap = (a: Ring, b: Ring): number =>
  polyclip.intersection([a], [b]).reduce((sum, [outer]) => sum + area(outer!), 0);

/** A goose-necked punch and a stepped bed: outlines that are not convex. */
const press: Press = {
  ...samplePress,
  punch: outline([0, 0], [6, 12], [-8, 40], [-8, 80], [12, 110], [12, 120], [-10, 120], [-22, 90], [-22, 30], [-6, 10]),
  bed: outline([-50, -60], [30, -60], [30, -90], [50, -90], [50, -300], [-50, -300]),
};
const TOOLS: ToolName[] = ["punch", "ram", "die", "bed", "finger"];

describe("Poses against an independent polygon library (polyclip-ts)", () => {
  test("200 random poses: a negative gap is an overlap, a positive one is none; the sheet keeps its area", () => {
    let [overlapping, apart] = [0, 0];
    for (let seed = 1; seed <= 200; seed++) {
      const part = randomPart(seed * 13);
      const draw = random(seed);
      const count = part.bends.length;
      const bend = 1 + Math.floor(draw() * count);
      const finished = part.bends.map((_, i) => i + 1).filter((b) => b !== bend && draw() < 0.6);
      const hit = { bend, gaugedEnd: draw() < 0.5 ? "first" : "last" } as const;
      const moment = (["flat", "loaded", "free"] as const)[Math.floor(draw() * 3)]!;
      const pose = poseAtHit(part, press, finished, hit, degrees(2), moment, mm(0.002));
      const sheet = ring(pose.part);
      for (const tool of TOOLS) {
        const gap = pose.gaps[tool];
        if (Math.abs(gap) < 0.02) continue;
        const common = overlap(sheet, ring(pose.tools[tool]));
        if (gap < 0) overlapping++;
        else apart++;
        expect(common > 1e-6, `pose ${seed}, ${tool}, gap ${gap}, common ${common}`).toBe(gap < 0);
      }
    }
    expect(overlapping).toBeGreaterThan(50);
    expect(apart).toBeGreaterThan(300);
  }, 120_000);

  test("a square L at the end of its stroke has the area of its middle line times the thickness", () => {
    const [t, r] = [2, 3];
    const L = {
      thickness: mm(t),
      flanges: [mm(30), mm(50)],
      bends: [{ angle: degrees(90), deduction: mm(deductionFor(90, r, t)), insideRadius: mm(r) }],
    };
    const { part } = poseAtHit(L, press, [], { bend: 1, gaugedEnd: "last" }, degrees(0), "loaded", mm(1e-5));
    expect(area(part)).toBeCloseTo(t * (30 - 5 + 50 - 5 + (Math.PI / 2) * (r + t / 2)), 2);
  });

  test("on sharp shoulders the outside corner of a square bend sinks by half the opening", () => {
    const [t, r] = [2, 3];
    const L = {
      thickness: mm(t),
      flanges: [mm(30), mm(50)],
      bends: [{ angle: degrees(90), deduction: mm(deductionFor(90, r, t)), insideRadius: mm(r) }],
    };
    const { part, tools } = poseAtHit(L, press, [], { bend: 1, gaugedEnd: "last" }, degrees(0), "loaded");
    // Lowest point: outside of the round, (r + t)(sqrt 2 - 1) above the corner at -V / 2; the tip is t above it.
    const lowest = -8 + 5 * (Math.SQRT2 - 1);
    expect(Math.min(...part.map(([, y]) => y))).toBeCloseTo(lowest, 2);
    expect(Math.min(...tools.punch.map(([, y]) => y))).toBeCloseTo(lowest + t, 9);
  });
});

describe("Shadows", () => {
  const inside = (shape: Ring, x: number, y: number): boolean =>
    shape.reduce((odd, [ax, ay], i) => {
      const [bx, by] = shape[(i + 1) % shape.length]!;
      return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay) ? !odd : odd;
    }, false);
  test.each([
    ["behind", shadowBehind, 1, 0],
    ["above", shadowAbove, 0, 1],
    ["below", shadowBelow, 0, -1],
  ] as const)(
    "a point is in the shadow %s exactly when the outline, carried that way, comes over it",
    (_, shadow, dx, dy) => {
      const draw = random(9);
      for (const shape of [press.punch, press.bed, press.die, samplePress.finger].map(ring)) {
        const whole = shadow(shape);
        let [covered, missed] = [0, 0];
        for (let i = 0; i < 400; i++) {
          const [x, y] = [200 * draw() - 100, 400 * draw() - 250];
          const passed = Array.from({ length: 3000 }, (_, k) => k / 5).some((u) =>
            inside(shape, x - u * dx, y - u * dy),
          );
          if (passed) covered++;
          if (passed) expect(inside(whole, x, y), `${x}, ${y}`).toBe(true);
          else if (inside(whole, x, y)) missed++;
        }
        expect(covered).toBeGreaterThan(5);
        // Steps of 0.2 mm can walk over a corner, no more.
        expect(missed).toBeLessThan(5);
      }
    },
  );
});
