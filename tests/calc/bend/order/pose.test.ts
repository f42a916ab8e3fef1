import * as polyclip from "polyclip-ts";
import { describe, expect, test } from "vitest";
import { Hits } from "../../../../src/calc/bend/order/hit.ts";
import { poseAtHit } from "../../../../src/calc/bend/order/pose.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import {
  type Outline,
  shadowAbove,
  shadowBehind,
  shadowBelow,
  type ToolName,
} from "../../../../src/calc/bend/order/solid.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { deductionFor, randomPart } from "./random-part.ts";
import { area, gooseneck, inside, outline, samplePress } from "./sample-press.ts";

type Ring = [number, number][];
const ring = (points: Outline | Ring): Ring => points.map(([x, y]) => [x, y]);
/** Rounded and lifted by a ten-thousandth, so that faces that only touch do not leave the library with edges one on the other. */
const rounded = (points: Ring, lift: number): Ring =>
  points.map(([x, y]) => [Math.round(x * 1e6) / 1e6, Math.round((y + lift) * 1e6) / 1e6]);
const overlap = (sheet: Ring, tool: Ring): number => {
  const far = (k: 0 | 1) =>
    Math.max(...sheet.map((p) => p[k])) < Math.min(...tool.map((p) => p[k])) ||
    Math.max(...tool.map((p) => p[k])) < Math.min(...sheet.map((p) => p[k]));
  return far(0) || far(1) ? 0 : common(rounded(sheet, 1e-4), rounded(tool, 0));
};
const common = (a: Ring, b: Ring): number =>
  polyclip.intersection([a], [b]).reduce((sum, [outer]) => sum + area(outer!), 0);

/** A goose-necked punch and a stepped bed: outlines that are not convex. */
const press: Press = {
  ...samplePress,
  punch: gooseneck,
  bed: outline([-50, -60], [30, -60], [30, -90], [50, -90], [50, -300], [-50, -300]),
};
const TOOLS: ToolName[] = ["punch", "ram", "die", "bed", "finger"];

/** A square L with its bend made first. */
const [t, r] = [2, 3];
const squareOf = (first: number) => ({
  part: {
    thickness: mm(t),
    flanges: [mm(first), mm(50)],
    bends: [{ angle: degrees(90), deduction: mm(deductionFor(90, r, t)), insideRadius: mm(r) }],
  },
  press,
  finished: [],
  hit: { bend: 1, gaugedEnd: "last" } as const,
  springback: degrees(0),
});

describe("Poses against an independent polygon library (polyclip-ts)", () => {
  test("200 random poses: a negative gap is an overlap, a positive one is none", () => {
    let [overlapping, apart] = [0, 0];
    for (let seed = 1; seed <= 200; seed++) {
      const part = randomPart(seed * 13);
      const draw = randomFrom(seed);
      const count = part.bends.length;
      const bend = 1 + Math.floor(draw() * count);
      const finished = part.bends.map((_, i) => i + 1).filter((b) => b !== bend && draw() < 0.6);
      const hit = { bend, gaugedEnd: draw() < 0.5 ? "first" : "last" } as const;
      const moment = (["flat", "loaded", "free"] as const)[Math.floor(draw() * 3)]!;
      const pose = poseAtHit({ part, press, finished, hit, springback: degrees(2) }, moment, mm(0.002));
      const sheet = ring(pose.part);
      for (const tool of TOOLS) {
        const gap = pose.gaps[tool];
        if (Math.abs(gap) < 0.02) continue;
        const both = overlap(sheet, ring(pose.tools[tool]));
        if (gap < 0) overlapping++;
        else apart++;
        expect(both > 1e-6, `pose ${seed}, ${tool}, gap ${gap}, common ${both}`).toBe(gap < 0);
      }
    }
    expect(overlapping).toBeGreaterThan(50);
    expect(apart).toBeGreaterThan(300);
  }, 120_000);

  test("the verdict on 100 random strokes agrees with overlaps at 12 angles of each", () => {
    let [free, met] = [0, 0];
    for (let seed = 1; seed <= 100; seed++) {
      const part = randomPart(seed * 29, 2 + (seed % 4));
      const draw = randomFrom(seed);
      const bend = 1 + Math.floor(draw() * part.bends.length);
      const finished = part.bends.map((_, i) => i + 1).filter((b) => b !== bend && draw() < 0.6);
      const hit = { bend, gaugedEnd: draw() < 0.5 ? "first" : "last" } as const;
      const made = finished.reduce((bits, b) => bits | (1 << (b - 1)), 0);
      const open: Press = { ...press, openHeight: mm(900), stroke: mm(1000), offTheEnd: true, clearance: mm(0) };
      const obstacle = new Hits(
        part,
        part.bends.map(() => degrees(2)),
        open,
      )
        .reading(made, hit)
        .collision?.();
      const angle = Math.abs(part.bends[bend - 1]!.angle);
      // Taking the wanted angle off again as springback gives the pose at every angle on the way.
      const overlaps = Array.from({ length: 12 }, (_, i) => {
        const turned = ((angle + 2) * (i + 1)) / 12;
        const pose = poseAtHit(
          { part, press: open, finished, hit, springback: degrees(turned - angle) },
          "loaded",
          mm(0.02),
        );
        return Math.max(
          ...(["punch", "ram", "die", "bed"] as const).map((tool) => overlap(ring(pose.part), ring(pose.tools[tool]))),
        );
      });
      if (!obstacle) {
        free++;
        // The working contact, a tenth of a millimeter at the most along a few millimeters of nose and shoulders.
        expect(Math.max(...overlaps), `stroke ${seed}`).toBeLessThan(0.5);
      } else if (
        obstacle.phase === "bend" &&
        ["punch", "ram", "die", "bed"].includes(obstacle.tool) &&
        obstacle.by > 1
      ) {
        met++;
        expect(Math.max(...overlaps), `stroke ${seed}: ${JSON.stringify(obstacle)}`).toBeGreaterThan(0);
      }
    }
    expect(free).toBeGreaterThan(20);
    expect(met).toBeGreaterThan(20);
  }, 120_000);

  test("a square L at the end of its stroke has the area of its middle line times the thickness", () => {
    const { part } = poseAtHit(squareOf(30), "loaded", mm(1e-5));
    expect(area(part)).toBeCloseTo(t * (30 - 5 + 50 - 5 + (Math.PI / 2) * (r + t / 2)), 2);
  });

  test("on sharp shoulders the outside corner of a square bend sinks by half the opening", () => {
    const { part, tools } = poseAtHit(squareOf(30), "loaded");
    // Lowest point: outside of the round, (r + t)(sqrt 2 - 1) above the corner at -V / 2; the tip is t above it.
    const lowest = -8 + 5 * (Math.SQRT2 - 1);
    expect(Math.min(...part.map(([, y]) => y))).toBeCloseTo(lowest, 2);
    expect(Math.min(...tools.punch.map(([, y]) => y))).toBeCloseTo(lowest + t, 9);
  });
});

describe("The drawing of a pose", () => {
  const drawn = (first: number, sagitta: number) => poseAtHit(squareOf(first), "free", mm(sagitta));

  test("has the finger's face at the stop, 50 less half a deduction, whatever the finger's shape", () => {
    const stop = 50 - deductionFor(90, r, t) / 2;
    const { tools } = drawn(30, 0.1);
    const xs = tools.finger.map(([x]) => x - stop);
    xs.forEach((x, i) => {
      expect(x).toBeCloseTo(press.finger[i]![0], 9);
    });
  });

  test.each([0.1, 0.01, 0.001])("cuts across the outside of the round by no more than %d mm", (sagitta) => {
    const { part, tools } = drawn(30, sagitta);
    // The punch touches the middle of the inside; outside radius r + t about the same center.
    const center = Math.min(...tools.punch.map(([, y]) => y)) + r;
    const from = ([x, y]: readonly [number, number]) => Math.hypot(x, y - center);
    const across = part
      .map((p, i) => [p, part[(i + 1) % part.length]!] as const)
      .filter((ends) => ends.every((p) => Math.abs(from(p) - (r + t)) < 1e-6))
      .map(([a, b]) => r + t - from([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]));
    expect(across.length).toBeGreaterThan(3);
    expect(Math.max(...across)).toBeLessThanOrEqual(sagitta + 1e-9);
    expect(Math.max(...across)).toBeGreaterThan(sagitta / 3);
  });

  test("a flange that ends with its round, or half a thickness after it, has every corner", () => {
    for (const beyond of [0, 0.5, 1, 1.5]) {
      const { part, gaps } = drawn(r + t + beyond, 1e-4);
      expect(part.every((p) => p.length === 2 && p.every(Number.isFinite))).toBe(true);
      expect(Object.values(gaps).every(Number.isFinite)).toBe(true);
      expect(area(part)).toBeCloseTo(t * (beyond + 45 + (Math.PI / 2) * (r + t / 2)), 2);
    }
  });
});

describe("Shadows", () => {
  test.each([
    ["behind", shadowBehind, 1, 0],
    ["above", shadowAbove, 0, 1],
    ["below", shadowBelow, 0, -1],
  ] as const)(
    "a point is in the shadow %s exactly when the outline, carried that way, comes over it",
    (_, shadow, dx, dy) => {
      const draw = randomFrom(9);
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
