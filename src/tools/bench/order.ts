/**
 * npm run -s bench:order -- [--bends 8] [--parts 40] [--runs 5]
 * Time of a bend order, ms, on invented parts and an invented press: stairs, hats, channels with lips, and shapes drawn at random.
 * One line a family, then all together: parts, how many can be bent, median and worst of the parts' median times, worst
 * single run; and the median of processor time, which other work on the machine does not lengthen.
 */
import { parseArgs } from "node:util";
import { bendOrder } from "../../calc/bend/order/order.ts";
import { type BentPart, MOST_BENDS } from "../../calc/bend/order/part.ts";
import type { Press } from "../../calc/bend/order/press.ts";
import type { Outline } from "../../calc/bend/order/solid.ts";
import { degrees, mm } from "../../units/quantity.ts";
import { randomFrom } from "../random/random.ts";

const EXIT_USAGE = 64;
function readArguments(): { bends: number; parts: number; runs: number } {
  const options = {
    bends: { type: "string" },
    parts: { type: "string" },
    runs: { type: "string" },
    json: { type: "boolean" },
  };
  try {
    const { values } = parseArgs({ options } as Parameters<typeof parseArgs>[0]);
    const [bends, parts, runs] = [values.bends ?? 8, values.parts ?? 40, values.runs ?? 5].map(Number);
    if (bends! >= 1 && bends! <= MOST_BENDS && parts! >= 1 && runs! >= 1)
      return { bends: bends!, parts: parts!, runs: runs! };
    throw new Error(`--bends 1 to ${MOST_BENDS}, --parts and --runs 1 or more`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(EXIT_USAGE);
  }
}
const { bends, parts, runs } = readArguments();

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

const [thickness, radius, fibre] = [2, 2, 0.42];
function strip(flanges: number[], angles: number[]): BentPart {
  const deduction = (angle: number) => {
    const turned = (Math.abs(angle) * Math.PI) / 180;
    return 2 * (radius + thickness) * Math.tan(turned / 2) - turned * (radius + fibre * thickness);
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
const families: Record<string, (draw: Draw) => BentPart> = {
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
};

const median = (sorted: readonly number[]) => sorted[Math.floor(sorted.length / 2)] ?? 0;
const ascending = (times: number[]) => times.sort((a, b) => a - b);

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
  return { feasible, times: ascending(times), processor: (user + system) / 1000 / runs };
}

const all: ReturnType<typeof time>[] = [];
const report = (family: string, results: typeof all) => {
  const medians = ascending(results.map((r) => median(r.times)));
  const line = {
    family,
    bends,
    parts: results.length,
    feasible: results.filter((r) => r.feasible).length,
    median_ms: median(medians),
    processor_ms: median(ascending(results.map((r) => r.processor))),
    worst_ms: medians.at(-1),
    worst_single_ms: Math.max(...results.map((r) => r.times.at(-1) ?? 0)),
  };
  console.log(JSON.stringify(line));
};
// The first parts warm the engine up and are not counted.
const warm = randomFrom(1);
for (let i = 0; i < 10; i++) time(families.random!((low, high) => low + (high - low) * warm()));
for (const [family, make] of Object.entries(families)) {
  const next = randomFrom(family.length);
  const results = Array.from({ length: Math.ceil(parts / 4) }, () =>
    time(make((low, high) => low + (high - low) * next())),
  );
  all.push(...results);
  report(family, results);
}
report("all", all);
