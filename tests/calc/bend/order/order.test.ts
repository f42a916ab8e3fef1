import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Hits } from "../../../../src/calc/bend/order/hit.ts";
import { bendOrder } from "../../../../src/calc/bend/order/order.ts";
import type { BentPart } from "../../../../src/calc/bend/order/part.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import { costOf } from "../../../../src/calc/bend/order/search.ts";
import { bendStops, type End } from "../../../../src/calc/bend/order/stops.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import type { Working } from "../../../../src/units/working.ts";
import { refusalOf } from "../../../refusal-of.ts";
import { deductionFor, randomPart } from "./random-part.ts";
import { outline, samplePress } from "./sample-press.ts";

const square = (flanges: number[], angles: number[], t = 2): BentPart => ({
  thickness: mm(t),
  flanges: flanges.map(mm),
  bends: angles.map((a) => ({ angle: degrees(a), deduction: mm(deductionFor(a, t, t)), insideRadius: mm(t) })),
});
const springback = (part: BentPart, by = 1.5) => part.bends.map(() => degrees(by));
const order = (part: BentPart, press: Press = samplePress) => bendOrder(part, springback(part), press);

/** A press on which something can be made of most random parts: narrow punch, narrow die, much room. */
const roomyPress: Press = {
  ...samplePress,
  punch: outline([0, 0], [4, 10], [4, 180], [-4, 180], [-4, 10]),
  ram: outline([-30, 180], [30, 180], [30, 600], [-30, 600]),
  die: outline([-11, 0], [-6, 0], [0, -10.392], [6, 0], [11, 0], [11, -120], [-11, -120]),
  bed: outline([-40, -120], [40, -120], [40, -700], [-40, -700]),
  dieOpening: mm(12),
  dieAngle: degrees(60),
  openHeight: mm(260),
  stroke: mm(300),
  offTheEnd: true,
};

/** Every sequence of bends with every end at the back, hit by hit: no recursion over sets. */
function cheapestByTrial(part: BentPart, press: Press): number {
  const hits = new Hits(part, springback(part), press);
  const known = new Map<string, { collides: boolean; tight: number }>();
  const count = part.bends.length;
  let cheapest = Infinity;
  const face = (bend: number) => Math.sign(part.bends[bend - 1]!.angle);
  const go = (made: number, tight: number, turns: number, flips: number, last?: { bend: number; end: End }): void => {
    if (made === (1 << count) - 1) cheapest = Math.min(cheapest, costOf(tight, turns, flips));
    for (let bend = 1; bend <= count; bend++)
      for (const end of ["last", "first"] as const) {
        if (made & (1 << (bend - 1))) continue;
        const key = `${made} ${bend} ${end}`;
        if (!known.has(key)) {
          const reading = hits.reading(made, { bend, gaugedEnd: end });
          known.set(key, {
            collides: !!reading.collision,
            tight: reading.slidesOff || reading.gap < press.clearance ? 1 : 0,
          });
        }
        const hit = known.get(key)!;
        if (hit.collides) continue;
        const turned = last && last.end !== end ? 1 : 0;
        const flipped = last && face(last.bend) !== face(bend) ? 1 : 0;
        go(made | (1 << (bend - 1)), tight + hit.tight, turns + turned, flips + flipped, { bend, end });
      }
  };
  go(0, 0, 0, 0);
  return cheapest;
}

describe("The order found", () => {
  test("equals the cheapest of all sequences on 300 random parts of up to 6 bends", () => {
    let feasible = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const part = randomPart(seed * 101);
      const press = { ...roomyPress, clearance: mm(seed % 2 ? 1 : 5) };
      const found = order(part, press);
      const cheapest = cheapestByTrial(part, press);
      expect(found.feasible, `part ${seed}`).toBe(cheapest < Infinity);
      if (!found.feasible) continue;
      feasible++;
      const tight = found.hits.filter((h) => h.verdict === "tight").length;
      expect(costOf(tight, found.turns, found.flips), `part ${seed}`).toBe(cheapest);
      expect(found.hits.map((h) => h.bend).sort()).toEqual(part.bends.map((_, i) => i + 1));
    }
    // The comparison means something only when both answers occur often.
    expect(feasible).toBeGreaterThan(60);
    expect(feasible).toBeLessThan(290);
  });

  test("makes both lips of a hat before it is flipped once, and its top after", () => {
    const hat = order(square([20, 40, 80, 40, 20], [-90, 90, 90, -90]));
    expect(
      hat.feasible &&
        hat.hits
          .map((h) => h.bend)
          .slice(0, 2)
          .sort(),
    ).toEqual([1, 4]);
    expect(hat.feasible && [hat.turns, hat.flips]).toEqual([0, 1]);
  });

  test("gives the stops of bendStops where a square flange or an edge is the datum", () => {
    let same = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const part = randomPart(seed, 1 + (seed % 4));
      const found = order(part, { ...roomyPress, gaugeFrom: mm(0), gaugeTo: mm(300) });
      if (!found.feasible) continue;
      bendStops(part, found.hits).forEach((stop, i) => {
        const hit = found.hits[i]!;
        if (stop.points === "down" || !["edge", "flange"].includes(stop.datum.on)) return;
        // A finger this tall may meet something that stands out further; nearer than the datum it cannot stop.
        expect(hit.stop).toBeGreaterThanOrEqual(stop.stop - 1e-6);
        if (hit.datum.on !== stop.datum.on || hit.datum.flange !== stop.datum.flange) return;
        same++;
        expect(hit.stop).toBeCloseTo(stop.stop, 6);
      });
    }
    expect(same).toBeGreaterThan(30);
  });

  test("a finger meets a leaning flange at the height it says: on the slant from its mold line at the die's top", () => {
    for (const angle of [30, 45, 60, 75])
      for (const height of [5, 12]) {
        const part = square([40, 60, 30], [angle, angle]);
        const press = { ...roomyPress, gaugeFrom: mm(0), gaugeTo: mm(height) };
        const { contact } = new Hits(part, springback(part), press).half(0b1, 2, "first", true);
        const stops = bendStops(
          part,
          [1, 2].map((bend) => ({ bend, gaugedEnd: "first" as const })),
        );
        expect(contact).toMatchObject({ on: "leaning flange", leg: 1 });
        expect(contact!.y).toBeCloseTo(height, 9);
        expect(contact!.x).toBeCloseTo(stops[1]!.stop + height / Math.tan((angle * Math.PI) / 180), 2);
      }
  });

  test("names the flange, the tool and the overlap when a U is too deep", () => {
    const deep = order(square([90, 40, 90], [90, 90]));
    expect(deep.feasible).toBe(false);
    if (deep.feasible) return;
    expect(deep.finished.map((h) => h.bend)).toHaveLength(1);
    const { obstacle } = deep.blocked[0]!;
    expect([obstacle.tool, obstacle.leg === 1 || obstacle.leg === 3, obstacle.phase]).toEqual(["punch", true, "bend"]);
    expect(obstacle.by).toBeGreaterThan(5);
  });

  test.each([
    ["stroke too short", { stroke: mm(100) }, "ram travel"],
    ["no room for the sheet", { openHeight: mm(1.5) }, "open height"],
    ["gauge cannot come near enough", { nearestStop: mm(60) }, "gauge travel"],
    ["finger above the sheet", { gaugeFrom: mm(5), gaugeTo: mm(9) }, "finger"],
    ["a leg that slips into the V", { dieOpening: mm(60) }, "die opening"],
  ])("%s is named", (_, change, tool) => {
    const found = order(square([30, 40], [90]), { ...samplePress, ...change });
    expect(!found.feasible && found.blocked[0]!.obstacle.tool).toBe(tool);
  });

  test("a channel that hooks the barely raised punch comes out only off the end", () => {
    const channel = square([50, 70, 50], [90, 90]);
    const low: Press = { ...roomyPress, openHeight: mm(30), stroke: mm(100) };
    const toFront = order(channel, { ...low, offTheEnd: false });
    expect(order(channel, { ...low, offTheEnd: true }).feasible).toBe(true);
    expect(!toFront.feasible && toFront.blocked[0]!.obstacle.phase).toBe("remove");
    expect(order(channel, { ...low, openHeight: mm(250), stroke: mm(300), offTheEnd: false }).feasible).toBe(true);
  });

  test("a goose neck makes what a straight punch cannot, and off which a U is drawn along its legs; a closed shape comes off over its end alone", () => {
    const press: Press = { ...samplePress, openHeight: mm(200), stroke: mm(250) };
    const neck = outline(
      [0, 0],
      [6, 10],
      [14, 40],
      [20, 60],
      [20, 120],
      [-10, 120],
      [-10, 80],
      [2, 60],
      [2, 30],
      [-4, 10],
    );
    const narrow = square([48, 34, 20], [90, 90]);
    const straight = order(narrow, press);
    expect(!straight.feasible && straight.blocked[0]!.obstacle.tool).toBe("punch");
    expect(order(narrow, { ...press, punch: neck }).feasible).toBe(true);
    // The leg stands in the throat as the ram rises: the U hangs on the punch and slides off the way its legs point.
    expect(order(square([34, 34, 34], [90, 90]), { ...press, punch: neck }).feasible).toBe(true);
    // Lips 28 apart let a neck of 4 in, but not the foot of 32 out between them: only over the end of the punch.
    const foot = outline([0, 0], [16, 20], [16, 26], [2, 30], [2, 120], [-2, 120], [-2, 30], [-16, 26], [-16, 20]);
    const lipped = square([18, 36, 64, 36, 18], [90, 90, 90, 90]);
    const hooked = order(lipped, { ...press, punch: foot });
    expect(!hooked.feasible && hooked.blocked.map(({ obstacle }) => `${obstacle.phase} ${obstacle.tool}`)).toContain(
      "lift-off punch",
    );
    const over = order(lipped, { ...press, punch: foot, offTheEnd: true });
    expect(over.feasible && over.hits.map(({ slidesOff }) => slidesOff === true)).toEqual([false, false, false, true]);
    expect(over.feasible && over.hits.at(-1)!.verdict).toBe("tight");
  });

  test("below the clearance asked for a hit is tight and says where", () => {
    const u = square([30, 60, 40], [90, 90]);
    const wide = order(u, { ...samplePress, clearance: mm(200) });
    const tight = wide.feasible ? wide.hits.filter((h) => h.verdict === "tight") : [];
    expect(tight.length).toBeGreaterThan(0);
    for (const hit of tight) {
      expect(hit.gap).toBeLessThan(200);
      expect(hit.nearest?.tool).toMatch(/punch|ram|die|bed/);
    }
  });

  test("a part that closes on itself is refused by name", () => {
    const closed = order(square([40, 30, 30, 30, 40], [90, 90, 90, 90]), {
      ...roomyPress,
      openHeight: mm(400),
      stroke: mm(500),
    });
    expect(closed.feasible).toBe(false);
  });

  test("the working shows every stop of the answer", () => {
    const work: Working = [];
    const part = square([30, 60, 40], [90, 90]);
    const found = bendOrder(part, springback(part), samplePress, work);
    const stops = work.filter((s) => s.unit === "mm").map((s) => s.value);
    expect(found.feasible && found.hits.map((h) => h.stop)).toEqual(stops);
  });
});

describe("Symmetry", () => {
  const summary = (part: BentPart) => {
    const found = order(part, roomyPress);
    return found.feasible
      ? [true, found.hits.filter((h) => h.verdict === "tight").length, found.turns, found.flips]
      : [false, found.finished.length];
  };
  test("read from the other end, or turned over, a part is as easy to bend", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const part = randomPart(seed, 1 + (seed % 5));
        const reversed = { ...part, flanges: part.flanges.toReversed(), bends: part.bends.toReversed() };
        const over = { ...part, bends: part.bends.map((b) => ({ ...b, angle: degrees(-b.angle) })) };
        expect(summary(reversed)).toEqual(summary(part));
        expect(summary(over)).toEqual(summary(part));
      }),
      { numRuns: 60 },
    );
  });

  test("twice as large in every length, part and press give the same order", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const part = randomPart(seed, 1 + (seed % 4));
        const thick = { ...part, thickness: mm(2), bends: part.bends };
        const sheet = square(
          part.flanges.map((f) => f + 20),
          thick.bends.map((b) => b.angle),
          2,
        );
        const double = <T>(v: T): T => (typeof v === "number" ? v * 2 : Array.isArray(v) ? v.map(double) : v) as T;
        const press: Press = { ...roomyPress, offTheEnd: false };
        const bigPress = Object.fromEntries(
          Object.entries(press).map(([k, v]) => [k, k === "dieAngle" ? v : double(v)]),
        ) as unknown as Press;
        const big: BentPart = {
          thickness: mm(4),
          flanges: sheet.flanges.map(double),
          bends: sheet.bends.map((b) => ({
            ...b,
            deduction: double(b.deduction),
            insideRadius: double(b.insideRadius),
          })),
        };
        // The push to the gauge (10 mm) and the tenth at the working contact do not scale: compare what was found, roughly.
        expect(order(big, bigPress).feasible).toBe(order(sheet, press).feasible);
      }),
      { numRuns: 40, seed: 5 },
    );
  });
});

describe("Growing a tool", () => {
  const grown = (press: Press, by: number, which: number): Press => {
    switch (which) {
      case 0:
        return {
          ...press,
          punch: outline([0, 0], [4 + by, 10 + 2.5 * by], [4 + by, 180], [-4 - by, 180], [-4 - by, 10 + 2.5 * by]),
        };
      case 1:
        return { ...press, ram: outline([-30 - by, 180 - by], [30 + by, 180 - by], [30 + by, 600], [-30 - by, 600]) };
      case 2:
        return {
          ...press,
          die: outline([-11 - by, 0], [-6, 0], [0, -10.392], [6, 0], [11 + by, 0], [11 + by, -120], [-11 - by, -120]),
        };
      case 3:
        return {
          ...press,
          bed: outline([-40 - by, -120 + by], [40 + by, -120 + by], [40 + by, -700], [-40 - by, -700]),
        };
      default:
        return {
          ...press,
          finger: outline([0, -by / 4], [60, -by / 4], [60, 25 + by], [0, 25 + by]),
          fingerRetracts: false,
        };
    }
  };
  test("never makes an infeasible part feasible, nor an impossible hit possible", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 0, max: 4 }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.boolean(),
        (seed, which, by, more, offTheEnd) => {
          const part = randomPart(seed, 1 + (seed % 4));
          const base: Press = { ...roomyPress, offTheEnd };
          const [small, large] = [grown(base, by, which), grown(base, by + more, which)];
          const before = order(part, small).feasible;
          const after = order(part, large).feasible;
          expect(after && !before).toBe(false);
          const [one, two] = [small, large].map((press) => new Hits(part, springback(part), press));
          const draw = randomFrom(seed);
          const bend = 1 + Math.floor(draw() * part.bends.length);
          const made = Math.floor(draw() * (1 << part.bends.length)) & ~(1 << (bend - 1));
          const hit = { bend, gaugedEnd: draw() < 0.5 ? "first" : "last" } as const;
          if (one!.reading(made, hit).collision) expect(two!.reading(made, hit).collision).toBeDefined();
        },
      ),
      { numRuns: 150 },
    );
    // And it does take away what could be made.
    const channel = square([30, 60, 40], [90, 90]);
    expect([0, 30].map((by) => order(channel, grown(roomyPress, by, 0)).feasible)).toEqual([true, false]);
  });

  test("less room above the die or less stroke never helps", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 20, max: 250, noNaN: true }), (seed, room) => {
        const part = randomPart(seed, 1 + (seed % 3));
        const press: Press = { ...roomyPress, offTheEnd: false, fingerRetracts: true };
        if (order(part, { ...press, stroke: mm(room) }).feasible) expect(order(part, press).feasible).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});

describe("Refusals", () => {
  const part = square([30, 60, 40], [90, 90]);
  test.each([
    ["springback of one bend only", () => bendOrder(part, [degrees(1)], samplePress), /^springback must be one angle/],
    ["negative springback", () => bendOrder(part, springback(part, -1), samplePress), /^springback must be 0 degrees/],
    [
      "a punch of two corners",
      () => order(part, { ...samplePress, punch: outline([0, 0], [1, 1]) }),
      /^outlines "punch" must be 3/,
    ],
    [
      "a bed that crosses itself",
      () => order(part, { ...samplePress, bed: outline([0, 0], [9, 9], [9, 0], [0, 9]) }),
      /^outlines "bed" must be a polygon/,
    ],
    [
      "NaN in an outline",
      () => order(part, { ...samplePress, ram: outline([0, 0], [Number.NaN, 9], [9, 0]) }),
      /^outlines "ram" must be corners/,
    ],
    [
      "a punch drawn off its tip",
      () => order(part, { ...samplePress, punch: outline([0, 5], [9, 90], [-9, 90]) }),
      /^outlines "punch" must be drawn with its tip at height 0/,
    ],
    [
      "a finger drawn off its face",
      () => order(part, { ...samplePress, finger: outline([-9, 0], [9, 0], [9, 9]) }),
      /^outlines "finger" must be drawn with its face at 0/,
    ],
    [
      "a die without opening",
      () => order(part, { ...samplePress, dieOpening: mm(0) }),
      /^press "Opening" must be above 0/,
    ],
    [
      "stops the wrong way round",
      () => order(part, { ...samplePress, furthestStop: mm(1) }),
      /^press "Furthest stop" must be beyond/,
    ],
  ])("%s is refused", (_, run, expected) => {
    expect(refusalOf(run)).toMatch(expected);
  });
});
