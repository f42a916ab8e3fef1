import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flatLength } from "../../../src/calc/flat/flat-length.ts";
import { blankWeight } from "../../../src/calc/flat/weight.ts";
import { degrees, kilogramsPerCubicMillimeter, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const flat = (
  legs: Parameters<typeof flatLength>[0]["legs"],
  flanges: number[],
  angles: number[],
  t = 2,
  r = 3,
  k = 0.4,
) =>
  flatLength({ flanges: flanges.map(mm), bendAngles: angles.map(degrees), thickness: mm(t), radius: mm(r), k, legs });

describe("flat length", () => {
  it("a strip without bends is its own length", () => {
    expect(flat("outside", [100], [])).toBe(100);
  });

  it("bends of 0 degrees take nothing, whatever the legs are measured to", () => {
    for (const legs of ["outside", "tangent", "inside", "DIN"] as const)
      expect(flat(legs, [50, 30], [0])).toBeCloseTo(80, 12);
  });

  it("the same bracket measured in four ways has one flat", () => {
    // Tangent legs 40 and 30 at 90 degrees, t 2, r 3: outside adds r + t to each, inside adds r.
    const wanted = flat("tangent", [40, 30], [90]);
    expect(flat("outside", [45, 35], [90])).toBeCloseTo(wanted, 12);
    expect(flat("DIN", [45, 35], [90])).toBeCloseTo(wanted, 12);
    expect(flat("inside", [43, 33], [90])).toBeCloseTo(wanted, 12);
    expect(wanted).toBeCloseTo(70 + (Math.PI / 2) * (3 + 0.4 * 2), 12);
  });

  it("DIN measures bends above 90 degrees to the outer tangent, not to the far mold-line corner", () => {
    const wanted = flat("tangent", [40, 30], [120]);
    expect(flat("DIN", [45, 35], [120])).toBeCloseTo(wanted, 12);
    const setback = Math.tan(Math.PI / 3) * 5;
    expect(flat("outside", [40 + setback, 30 + setback], [120])).toBeCloseTo(wanted, 9);
  });

  it("a flange shorter than its bends is refused by number", () => {
    expect(() => flat("outside", [20, 9, 20], [90, 90])).toThrow(Refusal);
    try {
      flat("outside", [20, 9, 20], [90, 90]);
    } catch (refusal) {
      expect((refusal as Refusal).message).toMatch(/^flanges must be .* for flange 2; got /);
    }
    expect(flat("outside", [20, 10, 20], [90, 90])).toBeGreaterThan(0); // exactly the two setbacks
  });

  it("does not depend on the side one starts from", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 100, max: 200, noNaN: true }), fc.double({ min: 0, max: 120, noNaN: true })),
          {
            minLength: 1,
            maxLength: 6,
          },
        ),
        (parts) => {
          const flanges = [150, ...parts.map(([flange]) => flange)];
          const angles = parts.map(([, angle]) => angle);
          expect(flat("outside", [...flanges].reverse(), [...angles].reverse())).toBeCloseTo(
            flat("outside", flanges, angles),
            6,
          );
        },
      ),
    );
  });
});

describe("blank weight", () => {
  it("one liter of water weighs one kilogram, three of them three", () => {
    const water = kilogramsPerCubicMillimeter(1e-6); // by definition, nearly
    const liter = { thickness: mm(100), length: mm(100), width: mm(100) };
    expect(blankWeight(liter, water, 1)).toBeCloseTo(1, 12);
    expect(blankWeight(liter, water, 3)).toBeCloseTo(3, 12);
  });
});
