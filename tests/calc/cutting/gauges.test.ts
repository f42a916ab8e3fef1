import { describe, expect, it } from "vitest";
import type { PartsNode } from "../../../src/calc/cutting/cut-tree.ts";
import { gaugesOf } from "../../../src/calc/cutting/gauges.ts";
import { patternOf } from "../../../src/calc/cutting/pattern.ts";
import { ALONG_X, ALONG_Y, type Problem } from "../../../src/calc/cutting/problem.ts";

const item = (w: number, h: number) => ({ w, h, quantity: 9, value: w * h });
const problem: Problem = {
  sheets: [
    {
      w: 100,
      h: 50,
      available: Infinity,
      cost: 5000,
      roots: [ALONG_X, ALONG_Y],
      trimPartLimit: Infinity,
      remnantWorth: 0,
    },
  ],
  items: [item(40, 20), item(30, 20), item(30, 15)],
  plain: [new Uint8Array(3).fill(1)],
  turned: [new Uint8Array(3)],
  stages: 2,
  rule: {
    ...{ longestCut: 120, reach: 60, backReach: 60, frontReach: 0, leastDrop: 1, leastHold: 1 },
    ...{ leastWaste: 0, twistWidth: 0, twistLength: 0 },
  },
  leastRemnant: 0,
};
const piece = (index: number) => ({ item: index, turned: false });
const strip = (...items: number[]): PartsNode => ({ direction: ALONG_X, parts: items.map(piece) });
const gauges = (...parts: PartsNode[]) =>
  [...gaugesOf(problem, [patternOf(0, { direction: ALONG_Y, parts })])].sort((a, b) => a - b);

// Counted by hand on the drawn sheet.
describe("gauges a pattern needs", () => {
  it("strip and crosscuts, each once, where waste stays in front", () => {
    expect(gauges(strip(0, 1), strip(0, 1))).toEqual([20, 30, 40]);
  });

  it("a piece narrower than its strip takes a sizing cut", () => {
    expect(gauges(strip(0, 2))).toEqual([15, 20, 30, 40]);
  });

  it("the part that stays in front at the end is not gauged", () => {
    // 40 + 30 + 30 fill the length: the widest, 40, stays in front.
    expect(gauges(strip(0, 1, 1))).toEqual([20, 30]);
  });
});
