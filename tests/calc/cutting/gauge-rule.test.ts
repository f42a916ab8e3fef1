import { describe, expect, test } from "vitest";
import { frontPart, type GaugeRule, NO_FRONT, WASTE_IN_FRONT } from "../../../src/calc/cutting/gauge-rule.ts";

/** Back gauge 48, drop 1, hold 2, waste 0.25; no front stop, no mark. */
const RULE: GaugeRule = {
  longestCut: 120,
  reach: 48,
  backReach: 48,
  frontReach: 0,
  leastDrop: 1,
  leastHold: 2,
  leastWaste: 0.25,
  twistWidth: 0,
  twistLength: 0,
};
const FRONT_STOP = { ...RULE, reach: 70, frontReach: 70 };
const MARK = { ...RULE, reach: Infinity, frontReach: Infinity };

// By hand: a part is measured, never the scrap; what is left at the end need not be.
describe("the part left in front of the blade", () => {
  test.each([
    ["one part, nothing over: no cut", RULE, [60], 0, 0],
    ["waste wide enough stays under the hold-downs", RULE, [20, 10], 5, WASTE_IN_FRONT],
    ["waste too narrow to hold, and no stop for the part in front of it", RULE, [10, 20], 1.5, NO_FRONT],
    ["the same against a front stop: trimmed off the widest part", FRONT_STOP, [10, 20], 1.5, 1],
    ["the same to a mark", MARK, [10, 20], 1.5, 1],
    ["waste thinner than can be sheared off", MARK, [10, 20], 0.2, NO_FRONT],
    ["one part beyond the reach stays in front where nothing is over", RULE, [20, 60], 0, 1],
    ["one part beyond the reach cannot be cut off the waste", RULE, [20, 60], 4, NO_FRONT],
    ["it can with a front stop: the waste drops", FRONT_STOP, [20, 60], 4, 1],
    ["two parts beyond the reach cannot be parted", RULE, [50, 60], 4, NO_FRONT],
    ["they can with a front stop, the wider last", FRONT_STOP, [50, 60], 4, 1],
    ["one beyond the front stop too is the last, with nothing over", FRONT_STOP, [50, 80], 0, 1],
    ["what falls behind the front stop must not be too narrow", { ...FRONT_STOP, leastDrop: 5 }, [50, 60], 4, 1],
    ["two beyond every stop only to a mark", FRONT_STOP, [80, 90], 4, NO_FRONT],
    ["and so they can", MARK, [80, 90], 4, 1],
    ["a part too narrow to drop or to hold", RULE, [0.8, 20], 5, NO_FRONT],
  ] as const)("%s", (_, rule, extents, waste, front) => {
    expect(frontPart(extents, extents.length, waste, rule)).toBe(front);
  });
});
