/** The order of the sets against every order tried. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { orderSets, type ToolSet } from "../../../src/calc/time/order-sets.ts";

const changes = (order: readonly ToolSet[]): number =>
  order
    .slice(1)
    .reduce((sum, set, i) => sum + Number(set.die !== order[i]!.die) + Number(set.punch !== order[i]!.punch), 0);
const orders = (sets: readonly ToolSet[]): ToolSet[][] =>
  sets.length <= 1 ? [[...sets]] : sets.flatMap((set, i) => orders(sets.toSpliced(i, 1)).map((rest) => [set, ...rest]));
const named = (pairs: readonly (readonly [string, string])[]): ToolSet[] =>
  pairs.map(([die, punch]) => ({ key: `${die}${punch}`, die, punch }));
const pairs = (count: number) =>
  fc.uniqueArray(fc.tuple(fc.constantFrom(..."abcd"), fc.constantFrom(..."wxyz")), {
    selector: (pair) => pair.join(),
    minLength: 1,
    maxLength: count,
  });
const inOrder = (sets: readonly ToolSet[], keys: readonly string[]) =>
  keys.map((key) => sets.find((set) => set.key === key)!);

describe("the order of the sets", () => {
  it("changes as little as any order, and has every set once", () => {
    fc.assert(
      fc.property(pairs(6), (some) => {
        const sets = named(some);
        const found = orderSets(sets);
        expect([...found].sort()).toEqual(sets.map(({ key }) => key).sort());
        expect(changes(inOrder(sets, found))).toBe(Math.min(...orders(sets).map(changes)));
      }),
      { numRuns: 150 },
    );
  });

  it("takes eleven changes for twelve in a chain that shares a tool at every step", () => {
    const chain = named(
      Array.from({ length: 12 }, (_, i) => [`d${Math.ceil(i / 2)}`, `p${Math.floor(i / 2)}`] as const),
    );
    const mixed = [...chain]
      .sort((a, b) => (a.key < b.key ? 1 : -1))
      .toSorted((a, b) => a.punch.localeCompare(b.punch) || 0);
    expect(changes(inOrder(mixed, orderSets(mixed)))).toBe(11);
    expect(changes(inOrder(chain, orderSets(chain.toReversed())))).toBe(11);
  });

  it("takes the nearest next one beyond twelve, the first of equals", () => {
    const many = named(Array.from({ length: 14 }, (_, i) => [`d${i % 7}`, `p${i < 7 ? 0 : 1}`] as const));
    const found = orderSets(many);
    // All with the first punch in their order, one step to the other punch on the same die, and back in order.
    expect(found.slice(0, 7)).toEqual(["d0p0", "d1p0", "d2p0", "d3p0", "d4p0", "d5p0", "d6p0"]);
    expect(found.slice(7)).toEqual(["d6p1", "d0p1", "d1p1", "d2p1", "d3p1", "d4p1", "d5p1"]);
  });

  it("leaves one or two as they are", () => {
    expect(orderSets(named([["b", "x"]]))).toEqual(["bx"]);
    expect(
      orderSets(
        named([
          ["b", "x"],
          ["a", "y"],
        ]),
      ),
    ).toEqual(["bx", "ay"]);
    expect(orderSets([])).toEqual([]);
  });
});
