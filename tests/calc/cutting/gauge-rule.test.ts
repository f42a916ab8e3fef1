import { describe, expect, test } from "vitest";
import { frontPart, type GaugeRule, NO_FRONT, WASTE_IN_FRONT } from "../../../src/calc/cutting/gauge-rule.ts";

/** Reach 48, drop 1, hold 2. */
const RULE: GaugeRule = { longestCut: 120, reach: 48, leastDrop: 1, leastHold: 2 };

describe("the part left in front of the blade", () => {
  test.each([
    ["one part, nothing over: no cut", [60], 0, 0],
    ["waste wide enough stays under the hold-downs", [20, 10], 5, WASTE_IN_FRONT],
    ["waste too narrow to hold falls, the widest part stays", [10, 20], 1.5, 1],
    ["waste too narrow to hold or to drop", [10, 20], 0.5, NO_FRONT],
    ["one part beyond the reach stays in front", [20, 60], 4, 1],
    ["two parts beyond the reach cannot be parted", [50, 60], 4, NO_FRONT],
    ["a part beyond the reach beside waste too narrow to drop", [60], 0.5, NO_FRONT],
    ["a part too narrow to drop or to hold", [0.8, 20], 5, NO_FRONT],
    ["long waste behind a long part falls in pieces", [60], 100, 0],
  ])("%s", (_, extents, waste, front) => {
    expect(frontPart(extents, extents.length, waste, RULE)).toBe(front);
  });
});
