import { describe, expect, it } from "vitest";
import { bestRoute } from "../../../src/calc/route/best-route.ts";
import {
  type Machine,
  type MachineTimes,
  type Route,
  type RouteLine,
  routeOf,
} from "../../../src/calc/route/problem.ts";
import { random, randomQuestion, shopWith } from "./random-route.ts";

/** Every assignment there is, in turn. */
function* every(lines: readonly RouteLine[], shop: MachineTimes): Generator<Route> {
  for (let set = 0; set < 2 ** lines.length; set++) {
    const machines = lines.map((_, i): Machine => ((set >> i) & 1 ? "shear" : "waterjet"));
    if (lines.every((line, i) => line[machines[i]!])) yield routeOf(lines, machines, shop);
  }
}

const seeds = Array.from({ length: 120 }, (_, i) => i + 1);

describe("the route against every assignment", () => {
  it.each(seeds)("seed %i: first to finish, and cheapest by a due time", (seed) => {
    const { lines, shop } = randomQuestion(seed, 1 + (seed % 12));
    const all = [...every(lines, shop)];
    const finish = Math.min(...all.map((route) => route.finish));
    const found = bestRoute(lines, shop);
    expect(found).toMatchObject({ finish, finishBound: finish, proved: true, meetsDue: true });
    expect(found.cost).toBe(Math.min(...all.filter((route) => route.finish <= finish).map(({ cost }) => cost)));
    const latest = Math.max(...all.map((route) => route.finish));
    for (const share of [0, 0.1, 0.5, 1]) {
      const due = Math.floor(finish + share * (latest - finish));
      const cost = Math.min(...all.filter((route) => route.finish <= due).map((route) => route.cost));
      const cheapest = bestRoute(lines, shop, due);
      expect(cheapest).toMatchObject({ cost, costBound: cost, proved: true, meetsDue: true });
      expect(cheapest.finish).toBeLessThanOrEqual(due);
    }
    const missed = bestRoute(lines, shop, finish - 1);
    expect(missed).toMatchObject({ finish, meetsDue: false });
  });
});

describe("what must hold whatever the numbers", () => {
  it.each(seeds.slice(0, 60))("seed %i: more queue, a later due time, a pin", (seed) => {
    const count = 20;
    const { lines, queues } = randomQuestion(seed + 1000, count);
    const next = random(seed);
    const shop = shopWith(queues, 1, 1);
    const now = bestRoute(lines, shop);
    for (const station of ["shear", "waterjet", "brake"] as const) {
      const fuller = shopWith({ ...queues, [station]: queues[station] + Math.floor(next() * 3000) }, 1, 1);
      expect(bestRoute(lines, fuller).finish).toBeGreaterThanOrEqual(now.finish);
      const due = now.finish + 2000;
      const late = bestRoute(lines, fuller, due);
      if (late.meetsDue) expect(late.cost).toBeGreaterThanOrEqual(bestRoute(lines, shop, due).cost);
    }
    const costs = [0, 500, 1000, 5000, 1e6].map((later) => bestRoute(lines, shop, now.finish + later).cost);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
    const pin = Math.floor(next() * count);
    for (const machine of ["shear", "waterjet"] as const) {
      if (!lines[pin]![machine]) continue;
      const other = machine === "shear" ? "waterjet" : "shear";
      const pinned = lines.map((line, i) => (i === pin ? { ...line, [other]: undefined } : line));
      expect(bestRoute(pinned, shop).finish).toBeGreaterThanOrEqual(now.finish);
      const due = now.finish + 1000;
      const kept = bestRoute(pinned, shop, due);
      if (kept.meetsDue) expect(kept.cost).toBeGreaterThanOrEqual(bestRoute(lines, shop, due).cost);
    }
  });
});
