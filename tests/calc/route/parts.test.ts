/** The pieces of the route's search by themselves: prices, first repairs, labels that stand, openers. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestRoute } from "../../../src/calc/route/best-route.ts";
import { cheapestWithin } from "../../../src/calc/route/cheapest-within.ts";
import { type Label, type Move, undominated, unmoved } from "../../../src/calc/route/labels.ts";
import { bestPrices, boundAt } from "../../../src/calc/route/multipliers.ts";
import { endsOf, inTime, openers } from "../../../src/calc/route/openers.ts";
import type { Choice, Machine } from "../../../src/calc/route/problem.ts";
import { repaired } from "../../../src/calc/route/repaired.ts";
import { within } from "../../../src/calc/route/within.ts";
import { plainBrake, plainMachine, random, shopWith } from "./random-route.ts";

const choice = fc
  .tuple(
    fc.integer({ min: 1, max: 30 }),
    fc.integer({ min: 1, max: 30 }),
    fc.integer({ min: 0, max: 50 }),
    fc.integer({ min: 0, max: 50 }),
  )
  .map(([s, w, a, b]): Choice => ({ shear: { time: s, cost: a }, waterjet: { time: w, cost: b } }));
const choices = fc.array(choice, { minLength: 1, maxLength: 9 });
const room = fc.record({ shear: fc.integer({ min: 0, max: 120 }), waterjet: fc.integer({ min: 0, max: 120 }) });

/** Least cost over all assignments that fit. */
function byTrial(lines: readonly Choice[], capacity: { shear: number; waterjet: number }): number {
  let best = Infinity;
  for (let set = 0; set < 1 << lines.length; set++) {
    let [shear, waterjet, cost] = [0, 0, 0];
    lines.forEach((line, i) => {
      if ((set >> i) & 1) [shear, cost] = [shear + line.shear.time, cost + line.shear.cost];
      else [waterjet, cost] = [waterjet + line.waterjet.time, cost + line.waterjet.cost];
    });
    if (shear <= capacity.shear && waterjet <= capacity.waterjet) best = Math.min(best, cost);
  }
  return best;
}

describe("prices of the machines' seconds", () => {
  it("give a bound below every assignment, and neither price changed alone gives a better one", () => {
    fc.assert(
      fc.property(
        choices,
        room,
        fc.array(fc.tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true })), {
          minLength: 20,
          maxLength: 20,
        }),
        (lines, capacity, others) => {
          const prices = bestPrices(lines, capacity);
          expect(prices.shear).toBeGreaterThanOrEqual(0);
          expect(prices.waterjet).toBeGreaterThanOrEqual(0);
          const bound = boundAt(lines, prices, capacity);
          const least = byTrial(lines, capacity);
          expect(bound).toBeLessThanOrEqual(least + 1e-6);
          // Where nothing fits the bound grows without end.
          if (least === Infinity) return;
          for (const [shear, waterjet] of others)
            for (const other of [
              { ...prices, shear },
              { ...prices, waterjet },
            ])
              expect(boundAt(lines, other, capacity)).toBeLessThanOrEqual(bound + 1e-5 * Math.max(1, Math.abs(bound)));
        },
      ),
      { numRuns: 150 },
    );
  });

  it("are zero where there is room for all on the cheaper machine", () => {
    const lines: Choice[] = [
      { shear: { time: 5, cost: 1 }, waterjet: { time: 9, cost: 4 } },
      { shear: { time: 5, cost: 7 }, waterjet: { time: 9, cost: 2 } },
    ];
    expect(bestPrices(lines, { shear: 5, waterjet: 9 })).toEqual({ shear: 0, waterjet: 0 });
    // A second less at the shear: 3 money for 5 seconds, the price at which the first line leaves.
    expect(bestPrices(lines, { shear: 4, waterjet: 99 })).toEqual({ shear: 3 / 5, waterjet: 0 });
    expect(bestPrices(lines, { shear: 99, waterjet: 8 })).toEqual({ shear: 0, waterjet: 5 / 9 });
  });
});

describe("the cheapest within two capacities", () => {
  it("is the cheapest of all that fit, with its bound; with a limit the cheapest, or any, that costs no more", () => {
    fc.assert(
      fc.property(choices, room, fc.integer({ min: 0, max: 400 }), (lines, capacity, limit) => {
        const least = byTrial(lines, capacity);
        const found = cheapestWithin(lines, capacity);
        expect(found).toMatchObject({ cost: least, bound: least, proved: true });
        const below = cheapestWithin(lines, capacity, limit);
        expect(below).toMatchObject(least <= limit ? { cost: least, bound: least } : { machines: undefined });
        expect(below.proved).toBe(true);
        expect(below.bound).toBeLessThanOrEqual(least);
        if (least > limit) expect(below.bound).toBeGreaterThan(limit);
        const limited = cheapestWithin(lines, capacity, limit, true);
        expect(limited.proved).toBe(true);
        expect(limited.machines !== undefined).toBe(least <= limit);
        if (limited.machines) {
          const cost = limited.machines.reduce((sum, machine, i) => sum + lines[i]![machine].cost, 0);
          expect(cost).toBe(limited.cost);
          expect(cost).toBeLessThanOrEqual(limit);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("more assignments than can be kept", () => {
  // Every line's money is its time at the shear, so that no two sets of moves are alike and all cost about as much.
  const next = random(8);
  const seconds = () => 100_000 + Math.floor(next() * 900_001);
  const lines = Array.from({ length: 40 }, (): Choice => {
    const shear = seconds();
    return { shear: { time: shear, cost: 0 }, waterjet: { time: seconds(), cost: shear } };
  });
  const total = (machine: Machine) => lines.reduce((sum, line) => sum + line[machine].time, 0);
  const capacity = { shear: Math.floor(total("shear") * 0.55), waterjet: Math.floor(total("waterjet") * 0.45) };

  it("give a plan that fits, close to its bound, and is not called proved", () => {
    const found = cheapestWithin(lines, capacity);
    expect(found.proved).toBe(false);
    expect(found.bound).toBeLessThan(found.cost);
    expect(found.cost / found.bound).toBeLessThan(1 + 1e-5);
    const on = (machine: Machine) =>
      lines.reduce((sum, line, i) => sum + (found.machines![i] === machine ? line[machine].time : 0), 0);
    expect(on("shear")).toBeLessThanOrEqual(capacity.shear);
    expect(on("waterjet")).toBeLessThanOrEqual(capacity.waterjet);
    expect(found.cost).toBe(total("shear") - on("shear"));
    // The first that costs no more is what was asked for, however many were left out before it.
    expect(cheapestWithin(lines, capacity, found.cost, true)).toMatchObject({ cost: found.cost, proved: true });
  });

  it("are not called proved once the brake must be opened by a line that would otherwise be cut elsewhere", () => {
    // All but the last fill the shear to the second and cost nothing there. Only the last is bent: it is cheaper on the
    // waterjet, but only cut on the shear, where then some of the others have no room, does it open the brake in time.
    // Hundreds of seconds, of which no sum makes the fifty that would prove it at once.
    const last: Choice = { shear: { time: 5_000_050, cost: 1 }, waterjet: { time: 5_020_000, cost: 0 } };
    const round = lines.map(({ shear, waterjet }): Choice => {
      const time = 100 * Math.ceil(shear.time / 100);
      return { shear: { time, cost: 0 }, waterjet: { time: waterjet.time, cost: time } };
    });
    const by = round.reduce((sum, { shear }) => sum + shear.time, 0);
    const question = [
      ...round.map((line) => ({ ...line, brake: 0 })),
      { ...last, brake: by - last.shear.time - 10_000 },
    ];
    const shop = shopWith({ shear: 0, waterjet: 0, brake: 0 }, 1, 1);
    const found = within(question, shop, { by, goal: "cost", first: openers(question, shop) });
    expect(found.machines?.at(-1)).toBe("shear");
    expect(found.bound).toBeLessThan(found.cost);
    expect(found.proved).toBe(false);
  });

  it("make a route that is not called proved either, with or without bends", () => {
    for (const brake of [0, 1]) {
      const question = lines.map((line) => ({ ...line, brake }));
      const shop = shopWith({ shear: 0, waterjet: 0, brake: 0 }, 1, 1);
      const due = Math.max(capacity.shear, capacity.waterjet);
      const route = bestRoute(question, shop, due);
      expect(route.proved).toBe(false);
      expect(route.costBound).toBeLessThanOrEqual(route.cost);
      expect(route.finish).toBeLessThanOrEqual(due);
    }
  });
});

const move = (index: number, machine: Move["machine"], penalty: number, shear: number, waterjet: number): Move => ({
  index,
  machine,
  penalty,
  choice: { shear: { time: shear, cost: 1 }, waterjet: { time: waterjet, cost: 2 } },
});

describe("a first plan", () => {
  const moves = [
    move(0, "shear", 6, 10, 10),
    move(1, "shear", 2, 2, 4),
    move(2, "shear", 4, 8, 20),
    move(3, "waterjet", 1, 5, 5),
  ];
  const root = unmoved(moves);
  const fitted = (capacity: { shear: number; waterjet: number }) => {
    const label = repaired(root, moves, capacity);
    return label && { shear: label.shear, waterjet: label.waterjet, penalty: label.penalty };
  };
  it("starts where the prices put it: 20 s at the shear, 5 at the waterjet", () => {
    expect(root).toMatchObject({ shear: 20, waterjet: 5, cost: 5, penalty: 0 });
    expect(fitted({ shear: 20, waterjet: 5 })).toEqual({ shear: 20, waterjet: 5, penalty: 0 });
  });
  it("moves what costs the least for the seconds it frees, until both fit", () => {
    // One second too many: 2 for 1 s, 4 for 1 s, 6 for 1 s; the second line goes.
    expect(fitted({ shear: 19, waterjet: 99 })).toEqual({ shear: 18, waterjet: 9, penalty: 2 });
    // Eight: 2 for 2 s, 4 for 8, 6 for 8; the third line goes.
    expect(fitted({ shear: 12, waterjet: 99 })).toEqual({ shear: 12, waterjet: 25, penalty: 4 });
    // Ten too many: the third frees 8 at 0.5, then the second 2 at 1.
    expect(fitted({ shear: 10, waterjet: 99 })).toEqual({ shear: 10, waterjet: 29, penalty: 6 });
    // The waterjet is short: its own line goes to the shear.
    expect(fitted({ shear: 25, waterjet: 4 })).toEqual({ shear: 25, waterjet: 0, penalty: 1 });
  });
  it("is none where no move helps, or none is enough", () => {
    expect(fitted({ shear: 20, waterjet: 4 })).toBeUndefined(); // frees 5 and adds 5
    expect(fitted({ shear: 0, waterjet: 10 })).toBeUndefined();
  });
});

describe("labels that stand", () => {
  const label = (shear: number, waterjet: number, cost: number): Label => ({
    shear,
    waterjet,
    cost,
    penalty: 0,
    moved: -1,
    from: undefined,
  });
  it("are those that no other beats in both loads and cost", () => {
    const figures = fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.nat(6)), { maxLength: 25 });
    fc.assert(
      fc.property(
        figures,
        fc.record({ shear: fc.integer({ min: -1, max: 4 }), waterjet: fc.integer({ min: -1, max: 4 }) }),
        (given, free) => {
          const all = given.map(([s, w, c]) => label(s, w, c));
          const seen = (one: Label) =>
            [Math.max(one.shear, free.shear), Math.max(one.waterjet, free.waterjet), one.cost] as const;
          const beats = (a: readonly number[], b: readonly number[]) => a.every((value, i) => value <= b[i]!);
          const kept = undominated([...all], free).map(seen);
          // Everything is matched by something kept, and nothing kept is beaten by something else that was kept.
          for (const one of all) expect(kept.some((other) => beats(other, seen(one)))).toBe(true);
          kept.forEach((one, i) => {
            expect(kept.some((other, j) => i !== j && beats(other, one))).toBe(false);
          });
        },
      ),
    );
  });
});

describe("lines that could open the brake", () => {
  const shop = {
    shear: plainMachine(10, 100, 100),
    waterjet: plainMachine(0, 100, 100),
    brake: plainBrake(0, 100, 100),
  };
  const cut = (time: number) => ({ time, cost: 0 });
  const lines = [
    { shear: cut(20), waterjet: cut(50), brake: 5 },
    { shear: cut(1), waterjet: undefined, brake: 0 },
    { shear: undefined, waterjet: cut(0), brake: 5 },
  ];
  it("come the earliest first; flat parts are none; a cut of no time is there with the first second", () => {
    expect(openers(lines, shop)).toEqual([
      { line: 2, machine: "waterjet", at: 1 },
      { line: 0, machine: "shear", at: 30 },
      { line: 0, machine: "waterjet", at: 50 },
    ]);
    expect(endsOf({ shear: cut(0), waterjet: cut(3), brake: 0 }, shop)).toEqual([
      { line: 0, machine: "shear", at: 0 },
      { line: 0, machine: "waterjet", at: 3 },
    ]);
  });
  it("are in time up to the last that lets the brake be done by then", () => {
    const first = openers(lines, shop);
    expect(inTime(first, 10, shop, 10)).toHaveLength(0);
    expect(inTime(first, 10, shop, 11)).toHaveLength(1);
    expect(inTime(first, 10, shop, 39)).toHaveLength(1);
    expect(inTime(first, 10, shop, 40)).toHaveLength(2);
    expect(inTime(first, 10, shop, 60)).toHaveLength(3);
  });
});
