import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { maximumShearThickness } from "../../../src/calc/shear/maximum-thickness.ts";
import { neededRating } from "../../../src/calc/shear/needed-rating.ts";
import { megapascals, mm } from "../../../src/units/quantity.ts";

describe("needed rating", () => {
  it("is the rating whose thickest sheet this is", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.integer({ min: 50, max: 600 }),
        fc.integer({ min: 50, max: 900 }),
        (t, low, high) => {
          const rating = neededRating(mm(t), megapascals(low), megapascals(high));
          expect(maximumShearThickness(rating, megapascals(low), megapascals(high))).toBeCloseTo(t, 9);
        },
      ),
    );
  });
});
