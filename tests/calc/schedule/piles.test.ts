import { expect, it } from "vitest";
import { pilesOf } from "../../../src/calc/schedule/piles.ts";
import { kilograms } from "../../../src/units/quantity.ts";

it.each([
  [100, 1, 30, 30, 4],
  [10, 40, 30, 1, 10],
  [10, 3, 30, 10, 1],
])("%d pieces of %d kg, piles of %d kg", (quantity, weight, limit, perPile, piles) => {
  expect(pilesOf(quantity, kilograms(weight), kilograms(limit))).toEqual({ perPile, piles });
});
