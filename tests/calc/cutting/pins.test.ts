/** Pinned sheets (figures by hand): cut as they say whatever else is planned, replayed apart, or refused by name. */
import { describe, expect, test } from "vitest";
import { planCuts, replay } from "../../../src/calc/cutting/index.ts";
import type { Limits, PinnedNode, PinnedParts } from "../../../src/calc/cutting/types.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const QUICK = { units: 2_000_000 };
const side = (name: string, turned = false): PinnedNode => ({ blank: name, turned });
const row = (...parts: PinnedNode[]): PinnedParts => ({ direction: 0, parts });
const full = sheet("full", 2400, 1200, { price: 100 as never });
const pinned = (layout: PinnedParts, quantity = 1) => sheet("kept", 2400, 1200, { quantity, pinned: layout });

describe("a pinned sheet", () => {
  const layout = row(side("a"), side("a"), side("b", true));
  const plan = (aWanted: number, stock = [full, pinned(layout)], shear: Partial<Limits> = {}) => {
    const blanks = [blank("a", 800, 1000, aWanted), blank("b", 1200, 500, 2)];
    const found = planCuts(blanks, stock, limits(shear), QUICK);
    expect(replay(found, blanks, stock, limits(shear))).toEqual([]);
    return found;
  };
  const kept = (found: ReturnType<typeof plan>) => found.patterns.filter(({ stock }) => stock === "kept");

  test("keeps its pattern when the rest of the bill changes", () => {
    for (const wanted of [2, 3, 9]) {
      const found = plan(wanted);
      expect(kept(found)).toMatchObject([
        {
          repeats: 1,
          yields: [
            { blank: "a", count: 2 },
            { blank: "b", count: 1 },
          ],
        },
      ]);
      expect(found.leftOut).toEqual([]);
      expect(found.bound).toBeLessThanOrEqual(found.value * (1 + 1e-9));
    }
  });

  test("alone is the whole plan, and its own bound", () => {
    const found = planCuts([blank("a", 800, 1000, 2)], [pinned(row(side("a"), side("a")))], limits(), QUICK);
    expect([found.patterns.length, found.value, found.bound]).toEqual([1, 2400 * 1200, 2400 * 1200]);
  });

  test("all sheets of its row are cut to it", () => {
    expect(kept(plan(4, [full, pinned(layout, 2)]))).toMatchObject([{ repeats: 2 }]);
  });

  test.each([
    [
      "a part that is not cut from it",
      row(side("c")),
      {},
      "Pinned of kept must be a layout of parts that are cut from this sheet; got c",
    ],
    [
      "more than is wanted",
      row(side("b", true), side("b", true), side("b", true)),
      {},
      "Pinned of kept must be no more of b than is still wanted, 2; got 3; lower its Count",
    ],
    [
      "what does not fit",
      row(side("a"), side("a"), side("a"), side("b")),
      {},
      "Pinned of kept must be a layout that the shear can cut from the sheet; got one it cannot",
    ],
    [
      "a cut longer than the blade",
      layout,
      { longestCut: mm(1000) },
      "Pinned of kept must be a layout that the shear can cut from the sheet",
    ],
  ])("is refused by name for %s", (_, wrong, shear, words) => {
    const blanks = [blank("a", 800, 1000, 4), blank("b", 1200, 500, 2)];
    expect(() => planCuts(blanks, [full, pinned(wrong)], limits(shear), QUICK)).toThrow(
      expect.objectContaining({ message: expect.stringContaining(words) }),
    );
  });

  test("keeps the grain: a blank along it may not be turned", () => {
    const blanks = [blank("a", 1000, 800, 1, "along")];
    const turned = [full, pinned(row(side("a", true)))];
    expect(() => planCuts(blanks, turned, limits(), QUICK)).toThrow(
      expect.objectContaining({ message: expect.stringContaining("Pinned of kept") }),
    );
  });

  test("needs a count", () => {
    expect(() => planCuts([blank("a", 800, 1000, 4)], [pinned(row(side("a")), Infinity)], limits(), QUICK)).toThrow(
      expect.objectContaining({ message: expect.stringContaining("beside a Count") }),
    );
  });
});
