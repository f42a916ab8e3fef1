/** The best place for a piece against every place of a layout: tried by putting it there and looking whether it fits. */
import { expect, test } from "vitest";
import { BestPlace } from "../../../src/calc/cutting/best-place.ts";
import { Budget } from "../../../src/calc/cutting/budget.ts";
import {
  DEPTH,
  DIRECTION,
  GuillotineLayout,
  INTERNAL,
  ITEM,
  PARENT,
  STRIDE,
  TIGHT_X,
} from "../../../src/calc/cutting/guillotine-layout.ts";
import type { Problem } from "../../../src/calc/cutting/problem.ts";
import { Random } from "../../../src/calc/cutting/random.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

const problem = (stages: number) => ({ stages, items: [{}] }) as unknown as Problem;
const W = 200;
const H = 140;

/** A layout of some pieces at random, none beyond the sheet. */
function drawn(unit: () => number): GuillotineLayout {
  const layout = new GuillotineLayout();
  layout.start(0, W, H, 1);
  for (let item = 0; item < 14; item++) {
    const [x, y] = [5 + Math.floor(unit() * 60), 5 + Math.floor(unit() * 40)];
    const slots = places(layout);
    const tried = put(layout, slots[Math.floor(unit() * slots.length)]!, x, y, item);
    if (tried) layout.copyFrom(tried);
  }
  return layout;
}
const places = ({ data, slots }: GuillotineLayout): number[] =>
  Array.from({ length: slots }, (_, k) => k * STRIDE).filter((at) => data[at + ITEM]! >= INTERNAL);
/** The layout with the piece there; undefined where the sheet does not hold it. */
function put(layout: GuillotineLayout, at: number, x: number, y: number, item = 99): GuillotineLayout | undefined {
  const copy = new GuillotineLayout();
  copy.copyFrom(layout);
  if (copy.data[at + ITEM] === INTERNAL) copy.addTo(at, item, x, y);
  else copy.pairWith(at, item, x, y);
  copy.settle();
  const [w, h] = [copy.data[TIGHT_X]!, copy.data[TIGHT_X + 1]!];
  return w <= W && h <= H ? copy : undefined;
}
/** What is wasted across where it is put: beside the piece as far as the node goes, or beside the others that it outgrows. */
function wasted({ data: d }: GuillotineLayout, at: number, x: number, y: number): number {
  const isNode = d[at + ITEM] === INTERNAL;
  const direction = isNode ? d[at + DIRECTION]! : 1 - d[d[at + PARENT]! + DIRECTION]!;
  const [along, across] = direction === 0 ? [x, y] : [y, x];
  const width = at === 0 ? (direction === 0 ? H : W) : d[at + TIGHT_X + 1 - direction]!;
  return across <= width ? along * (width - across) : (across - width) * d[at + TIGHT_X + direction]!;
}

test("the place that is found wastes least of all that hold the piece, in whatever layout and lying whichever way", () => {
  const unit = randomFrom(5);
  let found = 0;
  for (let round = 0; round < 60; round++) {
    const layouts = [drawn(unit), drawn(unit)];
    const [x, y] = [5 + Math.floor(unit() * 70), 5 + Math.floor(unit() * 50)];
    const stages = 2 + Math.floor(unit() * 3);
    const budget = new Budget(Infinity);
    const best = new BestPlace(problem(stages), new Random(1), budget, 0);
    best.start(2);
    best.forget();
    const ways = [
      [false, x, y],
      [true, y, x],
    ] as const;
    const all = layouts.flatMap((layout, k) =>
      ways.flatMap(([turned, w, h]) => {
        best.look(layout, k, turned ? 1 : 0, w, h);
        return places(layout)
          .filter((at) => layout.data[at + DEPTH]! < stages && put(layout, at, w, h))
          .map((at) => ({ k, at, turned, waste: wasted(layout, at, w, h) }));
      }),
    );
    if (all.length === 0) {
      expect(best.layout).toBe(-1);
      continue;
    }
    found++;
    const least = Math.min(...all.map(({ waste }) => waste));
    // The first of those that waste as little.
    const first = all.find(({ waste }) => waste === least)!;
    expect([best.layout, best.at, best.turned]).toEqual([first.k, first.at, first.turned]);
    // A layout that has not changed is answered for from memory.
    const { used } = budget;
    best.forget();
    layouts.forEach((layout, k) => {
      for (const [turned, w, h] of ways) best.look(layout, k, turned ? 1 : 0, w, h);
    });
    expect([best.layout, best.at, best.turned, budget.used]).toEqual([first.k, first.at, first.turned, used]);
    best.forget();
    expect(best.layout).toBe(-1);
  }
  expect(found).toBeGreaterThan(30);
});

test("with some passed over at random another place is found at times, and never one that does not hold the piece", () => {
  const unit = randomFrom(9);
  const layout = drawn(unit);
  const at = (blink: number, seed: number) => {
    const best = new BestPlace(problem(4), new Random(seed), new Budget(Infinity), blink);
    best.start(1);
    best.look(layout, 0, 0, 20, 10);
    return best.layout < 0 ? undefined : best.at;
  };
  const seeds = Array.from({ length: 40 }, (_, seed) => seed);
  const best = at(0, 0)!;
  const found = seeds.map((seed) => at(0.4, seed));
  const others = found.filter((place) => place !== best);
  expect(others.length).toBeGreaterThan(4);
  expect(others.length).toBeLessThan(30);
  for (const place of found) if (place !== undefined) expect(put(layout, place, 20, 10)).toBeDefined();
});

test("a changed layout is looked at anew, and what was known of it counts again when it is put back", () => {
  const layout = drawn(randomFrom(9));
  const budget = new Budget(Infinity);
  const best = new BestPlace(problem(4), new Random(0), budget, 0);
  best.start(1);
  const look = (version: number) => {
    layout.version = version;
    const before = budget.used;
    best.forget();
    best.look(layout, 0, 0, 20, 10);
    return budget.used > before;
  };
  expect([look(1), look(1)]).toEqual([true, false]);
  best.swap(0);
  expect([look(2), look(2)]).toEqual([true, false]);
  best.swap(0);
  expect(look(1)).toBe(false);
});
