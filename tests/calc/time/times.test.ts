import { describe, expect, it } from "vitest";
import { brakeTime } from "../../../src/calc/time/brake-time.ts";
import { handlePiece } from "../../../src/calc/time/handling.ts";
import { jetTime, timedFeed } from "../../../src/calc/time/jet-time.ts";
import { orderSets } from "../../../src/calc/time/order-sets.ts";
import { punchTravel } from "../../../src/calc/time/punch-travel.ts";
import { runTime, seconds } from "../../../src/calc/time/seconds.ts";
import { measure } from "../../../src/calc/time/station-time.ts";
import { degrees, kilograms, type MillimetersPerMinute, mm } from "../../../src/units/quantity.ts";

const feed = (value: number) => value as MillimetersPerMinute;
const rules = {
  perPiece: seconds(4),
  secondsPerKilogram: 1,
  secondsPerMillimeter: 0.01,
  onePersonLimit: kilograms(20),
  hoistAbove: kilograms(40),
  hoistTime: seconds(60),
};

describe("handling", () => {
  it.each([
    [10, "one person", 1, 4 + 10 + 10],
    [20, "one person", 1, 4 + 20 + 10],
    [20.1, "two people", 2, 4 + 20.1 + 10],
    [40.1, "hoist", 2, 4 + 40.1 + 10 + 60],
  ])("%d kg, 1 m long: %s", (weight, how, people, time) => {
    expect(handlePiece(kilograms(weight), mm(1000), rules)).toEqual({ how, people, time: seconds(time) });
  });
});

it("handling without a limit is for one person, up to the hoist's", () => {
  const lone = { ...rules, onePersonLimit: undefined };
  expect(handlePiece(kilograms(39), mm(1000), lone)).toMatchObject({ how: "one person", people: 1 });
  expect(handlePiece(kilograms(41), mm(1000), lone)).toMatchObject({ how: "hoist", people: 2 });
  expect(handlePiece(kilograms(99), mm(1000), { ...lone, hoistAbove: undefined }).how).toBe("one person");
});

describe("machines, by hand: distance over speed", () => {
  it("the punch goes half the opening into the die for a square bend", () => {
    expect(punchTravel(mm(50), degrees(90))).toBeCloseTo(25, 12);
    expect(punchTravel(mm(50), degrees(0))).toBe(0);
  });

  it("brake: two hits, the gauge to the second stop and back", () => {
    const motion = {
      openStroke: mm(100),
      approachSpeed: feed(6000),
      bendSpeed: feed(600),
      returnSpeed: feed(3000),
      gaugeSpeed: feed(6000),
    };
    // Each hit 1 s down, 2.5 s through 25 mm, 125 mm up in 2.5 s, 5 s handling; gauge 2 x 50 mm in 1 s.
    const time = brakeTime(
      mm(50),
      [mm(80), mm(30)].map((stop) => ({ bendAngle: degrees(90), stop })),
      motion,
      { first: seconds(5), next: seconds(5) },
    );
    expect(time).toBeCloseTo(2 * (1 + 2.5 + 2.5 + 5) + 1, 9);
  });

  it("waterjet: never faster than it drives", () => {
    const jet = { highestFeed: feed(2000), pierceTime: seconds(10) };
    expect(jetTime({ path: mm(1000), pierces: 3, feed: feed(500) }, jet)).toBeCloseTo(120 + 30, 9);
    expect(jetTime({ path: mm(1000), pierces: 0, feed: feed(5000) }, jet)).toBeCloseTo(30, 9);
    expect(timedFeed({ path: mm(600), time: seconds(90) })).toBeCloseTo(400, 9);
  });

  it("a run is whole seconds, rounded up, and a whole one stays", () => {
    expect(runTime(3, seconds(0.4))).toBe(2);
    expect(runTime(10, seconds(0.1))).toBe(1);
  });
});

describe("what a station counts", () => {
  const piece = { holes: 3, notches: 1, area: 2 * 304.8 ** 2, edge: mm(1219.2), weight: kilograms(0.45359237) };
  it.each([
    ["piece", 1],
    ["hole", 3],
    ["notch", 1],
    ["ft2", 2],
    ["m2", 0.18580608],
    ["ft", 4],
    ["m", 1.2192],
    ["lb", 1],
    ["kg", 0.45359237],
  ] as const)("%s", (basis, units) => {
    expect(measure(basis, piece, undefined)).toBeCloseTo(units, 12);
    expect(measure(basis, piece, 7)).toBe(7);
  });

  it("a count must be written", () => {
    expect(measure("count", piece, undefined)).toBeUndefined();
  });
});

describe("order of the tool sets", () => {
  const set = (die: string, punch: string) => ({ key: die + punch, die, punch });
  const changes = (order: readonly string[]) =>
    order
      .slice(1)
      .reduce((sum, key, i) => sum + (key[0] === order[i]![0] ? 0 : 1) + (key[1] === order[i]![1] ? 0 : 1), 0);
  const permutations = (keys: readonly string[]): string[][] =>
    keys.length <= 1
      ? [[...keys]]
      : keys.flatMap((key) => permutations(keys.filter((k) => k !== key)).map((rest) => [key, ...rest]));

  it("changes no more tools than the best of all orders", () => {
    const sets = [set("a", "x"), set("b", "y"), set("a", "y"), set("c", "x"), set("c", "z"), set("b", "z")];
    const keys = sets.map(({ key }) => key);
    const best = Math.min(...permutations(keys).map(changes));
    const order = orderSets(sets);
    expect([...order].sort()).toEqual([...keys].sort());
    expect(changes(order)).toBe(best);
  });

  it("orders many sets by the nearest next one, each once", () => {
    const sets = Array.from({ length: 20 }, (_, i) => set("abcde"[i % 5]!, "wxyz"[i % 4]!));
    expect(new Set(orderSets(sets)).size).toBe(20);
  });
});
