/**
 * npm run -s bench:order -- [--bends 8] [--parts 40] [--runs 5]
 * Time of a bend order, ms, on invented parts and an invented press: stairs, hats, channels with lips, and shapes drawn at random.
 * One line a family, then all together: parts, how many can be bent, median and worst of the parts' median times, worst
 * single run; and the median of processor time, which other work on the machine does not lengthen.
 */
import { bendOrder } from "../../calc/bend/order/order.ts";
import { type BentPart, MOST_BENDS } from "../../calc/bend/order/part.ts";
import type { Press } from "../../calc/bend/order/press.ts";
import type { Outline } from "../../calc/bend/order/solid.ts";
import { degrees, mm } from "../../units/quantity.ts";
import { randomFrom } from "../random/random.ts";
import { benchOptions } from "./options.ts";
import { medianOf } from "./spread.ts";

const { bends, parts, runs } = benchOptions(`bench:order [--bends 8 of ${MOST_BENDS}] [--parts 40] [--runs 5]`, {
  numbers: { bends: { usual: 8, most: MOST_BENDS }, parts: 40, runs: 5 },
});

const outline = (...points: [number, number][]): Outline => points.map(([x, y]) => [mm(x), mm(y)] as const);
const press: Press = {
  punch: outline([0, 0], [6, 10], [14, 40], [20, 60], [20, 140], [-10, 140], [-10, 80], [2, 60], [2, 30], [-4, 10]),
  ram: outline([-40, 140], [40, 140], [40, 600], [-40, 600]),
  die: outline([-20, 0], [-8, 0], [0, -9.534], [8, 0], [20, 0], [20, -60], [-20, -60]),
  bed: outline([-50, -60], [50, -60], [50, -700], [-50, -700]),
  finger: outline([0, 0], [60, 0], [60, 25], [0, 25]),
  dieOpening: mm(16),
  shoulderRadius: mm(0),
  dieAngle: degrees(80),
  gaugeFrom: mm(0),
  gaugeTo: mm(25),
  fingerRetracts: true,
  nearestStop: mm(5),
  furthestStop: mm(700),
  openHeight: mm(180),
  stroke: mm(250),
  clearance: mm(1),
  offTheEnd: false,
};

const [thickness, radius, fiber] = [2, 2, 0.42];
function strip(flanges: number[], angles: number[]): BentPart {
  const deduction = (angle: number) => {
    const turned = (Math.abs(angle) * Math.PI) / 180;
    return 2 * (radius + thickness) * Math.tan(turned / 2) - turned * (radius + fiber * thickness);
  };
  return {
    thickness: mm(thickness),
    flanges: flanges.map(mm),
    bends: angles.map((a) => ({ angle: degrees(a), deduction: mm(deduction(a)), insideRadius: mm(radius) })),
  };
}

type Draw = (low: number, high: number) => number;
const shape = (angle: (bend: number, draw: Draw) => number, flange: (draw: Draw) => number) => (draw: Draw) =>
  strip(
    Array.from({ length: bends + 1 }, () => flange(draw)),
    Array.from({ length: bends }, (_, i) => angle(i, draw)),
  );
const families = {
  stairs: shape(
    (i) => (i % 2 ? -90 : 90),
    (draw) => draw(24, 40),
  ),
  hats: shape(
    (i) => (i % 4 === 0 || i % 4 === 3 ? -90 : 90),
    (draw) => draw(24, 50),
  ),
  shallow: shape(
    (_, draw) => (draw(0, 1) < 0.5 ? -1 : 1) * draw(20, 60),
    (draw) => draw(20, 60),
  ),
  random: shape(
    (_, draw) => (draw(0, 1) < 0.5 ? -1 : 1) * (draw(0, 1) < 0.7 ? 90 : draw(20, 130)),
    (draw) => draw(20, 70),
  ),
} satisfies Record<string, (draw: Draw) => BentPart>;

function time(part: BentPart): { feasible: boolean; times: number[]; processor: number } {
  let feasible = false;
  const before = process.cpuUsage();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    feasible = bendOrder(
      part,
      part.bends.map(() => degrees(1.5)),
      press,
    ).feasible;
    return performance.now() - start;
  });
  const { user, system } = process.cpuUsage(before);
  return { feasible, times, processor: (user + system) / 1000 / runs };
}

const all: ReturnType<typeof time>[] = [];
const report = (family: string, results: typeof all) => {
  const medians = results.map((r) => medianOf(r.times));
  const line = {
    family,
    bends,
    parts: results.length,
    feasible: results.filter((r) => r.feasible).length,
    median_ms: medianOf(medians),
    processor_ms: medianOf(results.map((r) => r.processor)),
    worst_ms: Math.max(...medians),
    worst_single_ms: Math.max(...results.flatMap((r) => r.times)),
  };
  console.log(JSON.stringify(line));
};
// The first parts warm the engine up and are not counted.
const warm = randomFrom(1);
for (let i = 0; i < 10; i++) time(families.random((low, high) => low + (high - low) * warm()));
for (const [family, make] of Object.entries(families)) {
  const next = randomFrom(family.length);
  const results = Array.from({ length: Math.ceil(parts / 4) }, () =>
    time(make((low, high) => low + (high - low) * next())),
  );
  all.push(...results);
  report(family, results);
}
report("all", all);
