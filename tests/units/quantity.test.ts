import { expect, it } from "vitest";
import { degrees, radians } from "../../src/units/quantity.ts";

it.each([
  [0, 0],
  [90, Math.PI / 2],
  [180, Math.PI],
  [-45, -Math.PI / 4],
])("%d degrees in radians", (angle, expected) => {
  expect(radians(degrees(angle))).toBeCloseTo(expected, 12);
});
