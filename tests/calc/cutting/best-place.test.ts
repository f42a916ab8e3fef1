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
/** The same after some of its pieces were taken off again: their slots are dead until others take them. */
function thinned(layout: GuillotineLayout, unit: () => number): GuillotineLayout {
  for (let gone = 0; gone < 3; gone++) {
    const leaves = places(layout).filter((at) => layout.data[at + ITEM]! >= 0);
    if (leaves.length < 2) break;
    layout.remove(leaves[Math.floor(unit() * leaves.length)]!, () => {});
    layout.settle();
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
    const layouts = [drawn(unit), thinned(drawn(unit), unit)];
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
  expect(others.filter((place) => place !== undefined).length).toBeGreaterThan(4);
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

/** A sheet with one piece in its corner, the parts of the sheet along x or along y. */
function withOne(direction: 0 | 1, x: number, y: number): GuillotineLayout {
  const layout = new GuillotineLayout();
  layout.start(0, W, H, direction);
  layout.addTo(0, 0, x, y);
  layout.settle();
  return layout;
}
/** Where a piece of so much goes, "nowhere" where it does not fit, and whether it was looked for at all. */
function placeIn(
  layout: GuillotineLayout,
  x: number,
  y: number,
): { readonly at: number | "nowhere"; readonly looked: boolean } {
  const budget = new Budget(Infinity);
  const best = new BestPlace(problem(4), new Random(0), budget, 0);
  best.start(1);
  best.forget();
  best.look(layout, 0, 0, x, y);
  return { at: best.layout < 0 ? "nowhere" : best.at, looked: budget.used > 0 };
}

test("a piece that fills exactly what is left beside another goes there, as a part of the sheet, along x and along y", () => {
  expect(placeIn(withOne(0, W / 2, H), W / 2, H).at).toBe(0);
  expect(placeIn(withOne(0, W / 2, H), W / 2 + 1, H).at).toBe("nowhere");
  expect(placeIn(withOne(1, W, H / 2), W, H / 2).at).toBe(0);
  expect(placeIn(withOne(1, W, H / 2), W, H / 2 + 1).at).toBe("nowhere");
});

test("beside the parts of a sheet as much is wasted as the whole sheet is wider, not as its parts are", () => {
  // By hand, one piece of 100 x 100 on 200 x 140. One of 30 x 40 beside it wastes 30 x (140 - 40) = 3000; above it,
  // in 100 x 140, it wastes 40 x (100 - 30) = 2800.
  const layout = withOne(0, 100, 100);
  const piece = places(layout).find((at) => at !== 0)!;
  expect(placeIn(layout, 30, 40).at).toBe(piece);
});

test("a piece larger both ways than any room that is left is not looked for", () => {
  const layout = withOne(0, W / 2, H / 2);
  expect(placeIn(layout, W / 2 + 1, H + 1)).toEqual({ at: "nowhere", looked: false });
});

test("of many pieces each is remembered, lying either way, also where a search begins again with as many layouts", () => {
  const layout = drawn(randomFrom(9));
  const items = 3;
  const budget = new Budget(Infinity);
  const some = { stages: 4, items: Array.from({ length: items }, () => ({})) } as unknown as Problem;
  const best = new BestPlace(some, new Random(0), budget, 0);
  const look = () =>
    Array.from({ length: 2 * items }, (_, item) => {
      best.forget();
      best.look(layout, 0, item, 20 + item, 10);
      return [best.layout, best.at, best.turned];
    });
  best.start(1);
  const first = look();
  expect(first.map(([, , turned]) => turned)).toEqual([false, true, false, true, false, true]);
  const { used } = budget;
  best.start(1);
  expect(look()).toEqual(first);
  expect(budget.used).toBe(used);
});
