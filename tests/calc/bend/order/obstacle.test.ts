import { expect, it } from "vitest";
import { type Obstacle, obstacleInWords } from "../../../../src/calc/bend/order/watch.ts";

it.each<[Obstacle["tool"], Obstacle["leg"], string]>([
  ["punch", 2, "flange 2 meets the punch"],
  ["bed", "finger", "the gauge finger meets the bed"],
  ["die opening", 1, "flange 1 does not reach the die's shoulder"],
  ["gauge travel", 1, "the back gauge does not reach the stop"],
  ["ram travel", 1, "the stroke of the ram is too short"],
  ["open height", 1, "the brake does not open far enough"],
])("%s, %s: %s", (tool, leg, words) => {
  expect(obstacleInWords({ tool, leg })).toBe(words);
});
