import { describe, expect, it } from "vitest";
import { CellError } from "../../src/units/cell.ts";
import { message, noAnswer, wrong } from "../../src/units/refusal.ts";
import { showBoth, showForce, showGiven, showNumber, showOnTape, showReading } from "../../src/units/show.ts";

describe("figures in sentences", () => {
  it.each([
    [0, "0"],
    [0.25, "0.25"],
    [12.7, "12.7"],
    [1830, "1830"],
    [0.3333333, "0.3333"],
    [123456, "123456"],
    [-0.5, "-0.5"],
    [1e-12, "1.00e-12"],
    [1e300, "1.00e+300"],
  ])("%d is written %s", (value, text) => {
    expect(showNumber(value)).toBe(text);
  });

  it("a length stands in both systems, a force in two figures", () => {
    expect(showBoth(12.7, "length")).toBe("0.5 in (12.7 mm)");
    expect(showForce(1_779_288, "in")).toBe("200 tons");
    expect(showForce(159_690, "in")).toBe("18 tons");
    expect(showForce(4_340, "mm")).toBe("4.3 kN");
  });

  it.each([
    [4.647, "4 41/64"],
    [47.969, "47 31/32"],
    [5.147, "5 9/64"],
    [0.375, "3/8"],
    [11.995, "12"],
    [0, "0"],
    // Over 24 in a tape is read to 1/32: 30.02 is nearest 30 1/32, not 30 1/64.
    [30.02, "30 1/32"],
  ])("%d in is %s on a tape", (inches, text) => {
    expect(showOnTape(inches * 25.4)).toBe(text);
  });

  it("a calculated length stands as it is read on the floor: 0.001 in, 0.01 mm", () => {
    expect(showReading(0.41676 * 25.4, "in")).toBe("0.417 in");
    expect(showReading(0.41676 * 25.4, "mm")).toBe("10.59 mm");
    expect(showReading(1219.2, "in")).toBe("48 in");
    expect(showReading(0, "mm")).toBe("0 mm");
    expect(showReading(-0.001, "in")).toBe("0 in");
  });

  it.each([
    [null, "nothing"],
    [undefined, "nothing"],
    ["", "nothing"],
    [true, "TRUE"],
    ["abc", '"abc"'],
    ["two\nlines", '"two lines"'],
    [46026, "46026"],
    [Number.POSITIVE_INFINITY, "a number too large"],
    [new CellError("#REF!"), "#REF!"],
    ["x".repeat(100), `"${"x".repeat(57)}..."`],
  ])("what was given is quoted on one short line: %j", (given, text) => {
    expect(showGiven(given)).toBe(text);
  });

  it("every refusal has the one grammar", () => {
    expect(message("radius", "a length", '"abc"')).toBe('radius must be a length; got "abc"');
    expect(wrong("radius", "a length", "abc", "write 3 mm").message).toBe(
      'radius must be a length; got "abc"; write 3 mm',
    );
    expect(wrong("radius", "given", null).code).toBe("#VALUE!");
    expect(noAnswer("gauge", "known", "99 ga").toCell()).toEqual(
      new CellError("#N/A", "gauge must be known; got 99 ga"),
    );
  });
});

describe("figures at the edges of a way of writing", () => {
  it("14 zeros are written out, 15 are not; so are nine places behind the point, and ten are not", () => {
    expect(showNumber(1e14)).toBe("100000000000000");
    expect(showNumber(1e15)).toBe("1.00e+15");
    expect(showNumber(1e-9)).toBe("0.000000001");
    expect(showNumber(1e-10)).toBe("1.00e-10");
    expect(showNumber(Number.POSITIVE_INFINITY)).toBe("a number too large");
  });
  it("tons from 100 on are rounded to two figures, below they keep two", () => {
    expect(showForce(100 * 8896.443230521, "in")).toBe("100 tons");
    expect(showForce(144.6 * 8896.443230521, "in")).toBe("140 tons");
    expect(showForce(73.4 * 8896.443230521, "in")).toBe("73 tons");
  });
  it("60 signs are quoted whole, 61 are cut; runs of blanks become one", () => {
    expect(showGiven("x".repeat(60))).toBe(`"${"x".repeat(60)}"`);
    expect(showGiven("x".repeat(61))).toBe(`"${"x".repeat(57)}..."`);
    expect(showGiven("a \n\t b")).toBe('"a b"');
  });
});
