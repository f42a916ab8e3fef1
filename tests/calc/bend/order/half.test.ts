/** One side of the sheet at one hit: how it comes in, what may touch, how it goes out; and which of its ways is taken. */
import { describe, expect, test } from "vitest";
import { posed } from "../../../../src/calc/bend/order/chain.ts";
import { Hits } from "../../../../src/calc/bend/order/hit.ts";
import type { BentPart } from "../../../../src/calc/bend/order/part.ts";
import type { Piece } from "../../../../src/calc/bend/order/piece.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import type { ReadHalf } from "../../../../src/calc/bend/order/read-half.ts";
import type { Solid } from "../../../../src/calc/bend/order/solid.ts";
import type { Reading } from "../../../../src/calc/bend/order/watch.ts";
import { tipping, WAYS_IN, WAYS_OUT } from "../../../../src/calc/bend/order/ways.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { deductionFor, randomPart } from "./random-part.ts";
import { gooseneck, inside, samplePress } from "./sample-press.ts";
import { BD, square } from "./square-part.ts";

const hitsOf = (part: BentPart, press: Press) =>
  new Hits(
    part,
    part.bends.map(() => degrees(2)),
    press,
  );

describe("the gauge finger", () => {
  // As the sheet starts to turn, its lower corner pushes the finger back by up to ((1 - K) t)^2 / (2 stop), K 0.3 or more
  // (derived): less than t^2 / (4 stop), which it may, beside the tenth of a millimeter of the drawings.
  test.each([
    [60, 60 - BD / 2],
    [10, 10 - BD / 2],
  ])("may be pushed back a little, the more the nearer it stands: flange %d", (flange, stop) => {
    const half = hitsOf(square([40, flange], [1]), samplePress).half(0, 1, "last", true);
    expect(half.contact!.x).toBeCloseTo(stop, 9);
    const may = half.rules.look.finger[1] as number;
    expect(may).toBeCloseTo(0.1 + 2 ** 2 / (4 * stop), 12);
    expect(may).toBeGreaterThan((0.7 * 2) ** 2 / (2 * stop));
  });

  test("a flange that hangs under it cannot be laid down in place, but short of it and pushed back", () => {
    // Bend 1 leans 45 degrees downward: its flange reaches about 8 mm further back, below the sheet and the finger.
    const leaning = { angle: degrees(-45), deduction: mm(deductionFor(45, 2, 2)), insideRadius: mm(2) };
    const part: BentPart = { ...square([12, 60, 40], [1, 1]), bends: [leaning, square([9, 9], [1]).bends[0]!] };
    const half = hitsOf(part, samplePress).half(0b1, 2, "first", true);
    expect(half.contact?.on).toBe("leaning flange");
    const way = (lift: number, short: number) =>
      half.insertion(WAYS_IN.find((each) => each.lift === lift && each.short === short)!);
    expect(way(1, 0).collision?.()).toMatchObject({ tool: "finger", phase: "insert" });
    expect(way(1, 10).collision).toBeUndefined();
    expect(way(0, 0).collision?.()).toMatchObject({ tool: "die", phase: "insert" });
  });
});

/** Twisted around its neck and hardly raised, so that many sheets hook it. */
const hooked: Press = {
  ...samplePress,
  punch: gooseneck,
  openHeight: mm(60),
  stroke: mm(100),
  clearance: mm(8),
};

describe("the way that is taken", () => {
  const roomiest = (ways: readonly (readonly Reading[])[]): number =>
    Math.max(
      ...ways
        .filter((sides) => sides.every(({ collision }) => !collision))
        .map((sides) => Math.min(...sides.map(({ gap }) => gap))),
    );
  test("is the roomiest that meets nothing, in and out", () => {
    let [free, tight, blocked] = [0, 0, 0];
    for (let seed = 1; seed <= 150; seed++) {
      const part = randomPart(seed * 7, 2 + (seed % 3));
      const draw = randomFrom(seed);
      const bend = 1 + Math.floor(draw() * part.bends.length);
      const finished = Math.floor(draw() * (1 << part.bends.length)) & ~(1 << (bend - 1));
      const hits = hitsOf(part, hooked);
      const back = hits.half(finished, bend, "first", true);
      const front = hits.half(finished, bend, "last", false);
      const strokes = [back.stroke(), front.stroke()];
      if (strokes.some(({ collision }) => collision)) continue;
      const stages = [
        roomiest([strokes]),
        roomiest(WAYS_IN.map((way) => [back.insertion(way), front.insertion(way)])),
        roomiest(WAYS_OUT.map((way) => [back.removal(way), front.removal(way)])),
      ];
      const { gap, collision } = hits.reading(finished, { bend, gaugedEnd: "first" });
      expect(collision === undefined, `part ${seed}`).toBe(Math.min(...stages) > -Infinity);
      if (collision) blocked++;
      else {
        // Of ways that all keep the clearance any will do.
        expect(Math.min(gap, 8), `part ${seed}`).toBe(Math.min(...stages));
        if (gap < 8) tight++;
        else free++;
      }
    }
    expect(Math.min(free, tight, blocked)).toBeGreaterThan(3);
  });
});

describe("tipped out", () => {
  test("the frame swings about the outside corner, by no more than is said and no less for a small step", () => {
    for (let seed = 1; seed <= 50; seed++) {
      const part = randomPart(seed);
      const half = hitsOf(part, hooked).half(0, 1, "last", true);
      const { pose, shift } = tipping(half, 10, []);
      const { free } = half.seat;
      const moved = (p: number, q: number) => Math.hypot(pose(p).x - pose(q).x, pose(p).y - pose(q).y);
      for (const [p, q] of [
        [free, 0],
        [free, 2 * free],
        [0.3 * free, 0.4 * free],
      ] as const) {
        expect(moved(p, q)).toBeLessThanOrEqual(shift(p, q) + 1e-12);
        const near = p + (q - p) * 1e-4;
        expect(moved(p, near) / shift(p, near)).toBeCloseTo(1, 6);
      }
    }
  });

  /** Points on the middle lines of the sheet. */
  const points = (pieces: readonly Piece[]): [number, number][] =>
    pieces.flatMap((p) =>
      Array.from({ length: 21 }, (_, i): [number, number] => {
        const s = i / 20;
        if (!p.arc) return [p.ax + s * (p.bx - p.ax), p.ay + s * (p.by - p.ay)];
        const half = Math.acos(p.cosine);
        const angle = Math.atan2(p.my, p.mx) + (2 * s - 1) * half;
        return [p.cx + p.radius * Math.cos(angle), p.cy + p.radius * Math.sin(angle)];
      }),
    );
  const corners = ({ xs, ys }: Solid) => Array.from(xs, (x, i) => [x, ys[i]!] as const);
  const meets = (half: ReadHalf, at: number, corner: number): boolean => {
    const sheet = points(posed(half.pieces(half.seat.free), tipping(half, corner, []).pose(at)));
    const { fixed, moving } = half.side.tools;
    const [below, above] = [fixed.map(corners), moving.map(corners)];
    return sheet.some(
      ([x, y]) =>
        below.some((tool) => inside(tool, x, y)) || above.some((tool) => inside(tool, x, y - hooked.openHeight)),
    );
  };

  test("a way out that is free has no point of the sheet in die, bed or raised punch at 9 slopes on the way", () => {
    let [free, met] = [0, 0];
    for (let seed = 1; seed <= 150; seed++) {
      const part = randomPart(seed * 3, 2 + (seed % 3));
      const half = hitsOf(part, hooked).half((1 << part.bends.length) - 2, 1, "last", seed % 2 === 0);
      const own = half.side.finger ? "back level" : "front level";
      for (const way of WAYS_OUT.filter(({ tilt }) => tilt !== "as bent")) {
        const a = half.seat.free;
        const corner = way.lift * (hooked.openHeight - part.thickness);
        const to = way.tilt === own ? 0 : 2 * a;
        const hit = Array.from({ length: 9 }, (_, i) => a + ((to - a) * i) / 8).some((at) => meets(half, at, corner));
        if (half.removal(way).collision) {
          if (hit) met++;
          continue;
        }
        free++;
        expect(hit, `part ${seed}, ${way.tilt} at ${way.lift}`).toBe(false);
      }
    }
    expect(free).toBeGreaterThan(100);
    expect(met).toBeGreaterThan(100);
  });
});
