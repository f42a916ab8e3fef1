import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type BentPart, bendLines, flatOfPart } from "../../../../src/calc/bend/order/part.ts";
import { bendStops } from "../../../../src/calc/bend/order/stops.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { refusalOf } from "../../../refusal-of.ts";
import { randomPart } from "./random-part.ts";
import { BD, square } from "./square-part.ts";

describe("Back-gauge stops, worked by hand on a sheet of 2 mm with square bends", () => {
  test("a U of 30 x 60 x 40: both edges first, so each stop is its own flange less half a deduction", () => {
    const stops = bendStops(square([30, 60, 40], [1, 1]), [
      { bend: 1, gaugedEnd: "first" },
      { bend: 2, gaugedEnd: "last" },
    ]);
    expect(stops.map((s) => s.stop)).toEqual([30 - BD / 2, 40 - BD / 2]);
    expect(stops.map((s) => s.datum)).toEqual([
      { on: "edge", flange: 1 },
      { on: "edge", flange: 3 },
    ]);
  });

  test("the same U gauged on its bent flange: the web less half a deduction, outside face of flange 1", () => {
    const [, second] = bendStops(square([30, 60, 40], [1, 1]), [
      { bend: 1, gaugedEnd: "first" },
      { bend: 2, gaugedEnd: "first" },
    ]);
    expect(second!.stop).toBeCloseTo(60 - BD / 2, 9);
    expect(second!.datum).toEqual({ on: "flange", flange: 1 });
    expect(second!.points).toBe("up");
  });

  test("a Z points its finished flange down", () => {
    const [, second] = bendStops(square([30, 60, 40], [1, -1]), [
      { bend: 1, gaugedEnd: "first" },
      { bend: 2, gaugedEnd: "first" },
    ]);
    expect(second!.points).toBe("down");
    expect(second!.stop).toBeCloseTo(60 - BD / 2, 9);
  });

  test("before any bend the far stop spans unbent bends: 30 + 60 less one and a half deductions", () => {
    const [first] = bendStops(square([30, 60, 40], [1, 1]), [
      { bend: 2, gaugedEnd: "first" },
      { bend: 1, gaugedEnd: "first" },
    ]);
    expect(first!.stop).toBeCloseTo(90 - 1.5 * BD, 9);
  });

  test("past an acute bend the finger touches the round, r + t beyond the tangent line", () => {
    // 135 degrees: SB = 4 tan 67.5 = 9.6569, BA = 2.3562 * 2.84 = 6.6916, BD = 12.6222.
    const acute: BentPart = {
      thickness: mm(2),
      flanges: [30, 60, 40].map(mm),
      bends: [
        { angle: degrees(135), deduction: mm(12.6222), insideRadius: mm(2) },
        { angle: degrees(90), deduction: mm(BD), insideRadius: mm(2) },
      ],
    };
    const [, second] = bendStops(acute, [
      { bend: 1, gaugedEnd: "first" },
      { bend: 2, gaugedEnd: "first" },
    ]);
    // Tangent line of bend 1 to bend line 2: 60 - 9.6569 - BD / 2 = 48.5736; plus 4.
    expect(second!.stop).toBeCloseTo(60 - 9.6569 - BD / 2 + 4, 3);
    expect(second!.datum.on).toBe("round");
  });

  test("a bend of less than 90 degrees is named as a leaning flange", () => {
    const part: BentPart = {
      ...square([30, 60, 40], [1, 1]),
      // 45 degrees: SB = 1.6569, BA = 0.7854 * 2.84 = 2.2305, BD = 1.0832.
      bends: [{ angle: degrees(45), deduction: mm(1.0832), insideRadius: mm(2) }, square([1, 1], [1]).bends[0]!],
    };
    const [, second] = bendStops(part, [
      { bend: 1, gaugedEnd: "first" },
      { bend: 2, gaugedEnd: "first" },
    ]);
    expect(second!.datum.on).toBe("leaning flange");
  });
});

describe("Properties of stops", () => {
  test("gauged from both edges of the flat blank, the two stops of a first hit make the flat length", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const part = randomPart(seed);
        const rest = part.bends.map((_, i) => i + 1).slice(1);
        const ends = (["first", "last"] as const).map(
          (gaugedEnd) =>
            bendStops(
              part,
              [1, ...rest].map((bend) => ({ bend, gaugedEnd })),
            )[0]!.stop,
        );
        expect(ends[0]! + ends[1]!).toBeCloseTo(flatOfPart(part), 9);
      }),
    );
  });

  test("a part read from its other end has the same stops with the ends exchanged", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const part = randomPart(seed);
        const mirrored = { ...part, flanges: part.flanges.toReversed(), bends: part.bends.toReversed() };
        const count = part.bends.length;
        const order = part.bends.map((_, i) => ({ bend: i + 1, gaugedEnd: i % 2 ? "first" : "last" }) as const);
        const other = order.map(
          (h) => ({ bend: count + 1 - h.bend, gaugedEnd: h.gaugedEnd === "first" ? "last" : "first" }) as const,
        );
        const [a, b] = [bendStops(part, order), bendStops(mirrored, other)];
        a.forEach((s, i) => {
          expect(s.stop).toBeCloseTo(b[i]!.stop, 9);
        });
      }),
    );
  });

  test("bend lines are the flat length apart from the other side's", () => {
    const part = square([30, 60, 40], [1, -1]);
    const back = bendLines({ ...part, flanges: part.flanges.toReversed(), bends: part.bends.toReversed() });
    bendLines(part).forEach((line, i) => {
      expect(line + back.at(-1 - i)!).toBeCloseTo(flatOfPart(part), 9);
    });
  });
});

describe("Refusals", () => {
  const part = square([30, 60, 40], [1, 1]);
  const first = (bend: number) => ({ bend, gaugedEnd: "first" as const });
  test.each([
    ["a bend named twice", () => bendStops(part, [first(1), first(1)]), /^order must be every bend/],
    ["a bend that is not there", () => bendStops(part, [first(1), first(3)]), /^order must be every bend/],
    ["a missing bend", () => bendStops(part, [first(1)]), /^order must be every bend/],
    ["a missing flange", () => bendStops({ ...part, flanges: part.flanges.slice(1) }, []), /^flanges must be one more/],
    ["no thickness", () => bendStops({ ...part, thickness: mm(0) }, []), /^thickness must be above 0/],
    ["NaN thickness", () => bendStops({ ...part, thickness: mm(Number.NaN) }, []), /^thickness must be above 0/],
    [
      "a flange inside its bend",
      () => bendStops(square([3, 60, 40], [1, 1]), []),
      /^flange 1 must be an outside length/,
    ],
    ["a bend of 0 degrees", () => bendStops(square([30, 60], [0]), []), /^angle of bend 1 must be above 0/],
    [
      "an inside-out deduction",
      () => bendStops({ ...part, bends: part.bends.map((b) => ({ ...b, deduction: mm(9) })) }, []),
      /^deduction of bend 1 must be/,
    ],
    [
      "eleven bends",
      () => bendStops(square(Array(12).fill(40), Array(11).fill(1)), []),
      /^bend_angles must be 1 to 10/,
    ],
  ])("%s is refused", (_, run, message) => {
    expect(refusalOf(run)).toMatch(message);
  });
});
