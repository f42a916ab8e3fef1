import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseNumber } from "../../src/units/parse-number.ts";

describe("numbers as people type them", () => {
  it.each([
    ["0.25", 0.25],
    [".25", 0.25],
    ["0,25", 0.25],
    [",5", 0.5],
    ["4,5", 4.5],
    ["4.5", 4.5],
    ["5.", 5],
    ["1/4", 0.25],
    ["1 / 4", 0.25],
    ["1-1/2", 1.5],
    ["1 1/2", 1.5],
    ["1 - 1/2", 1.5],
    ["10-3/8", 10.375],
    ["3⁄8", 0.375],
    ["  7  ", 7],
    ["+3", 3],
    ["-3", -3],
    ["−3", -3],
    ["- 3", -3],
    ["-1-1/2", -1.5],
    ["0", 0],
    ["1234", 1234],
    ["1234.5", 1234.5],
    ["0,125", 0.125],
    ["12,34", 12.34],
    ["1234,5678", 1234.5678],
    ["1.234", 1.234],
  ])("%j is %d", (text, value) => {
    expect(parseNumber(text)).toBeCloseTo(value, 12);
  });

  it.each(["1,234", "12,345", "999,000", "1,234,567", "-1,234"])("%j may be read two ways", (text) => {
    expect(parseNumber(text)).toBe("ambiguous");
  });

  it.each([
    "",
    " ",
    "abc",
    "1/0",
    "1e3",
    "0x10",
    "Infinity",
    "NaN",
    "1.2.3",
    "1,2,3",
    "1,234.5",
    "1.234,5",
    "--3",
    "1/",
    "/4",
    "1-",
    "3 mm",
    "3kg",
    "1/2/3",
    ".",
    ",",
    "٣",
    "9".repeat(41),
  ])("%j is not one", (text) => {
    expect(parseNumber(text)).toBeUndefined();
  });

  it("whatever is typed, the answer is finite, ambiguous or none", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."0123456789.,/- +⁄a") }), (text) => {
        const value = parseNumber(text);
        return value === undefined || value === "ambiguous" || Number.isFinite(value);
      }),
    );
  });

  it("reads back every decimal it is given", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (digits, places) => {
        const text = (digits / 10 ** places).toFixed(places);
        expect(parseNumber(text)).toBe(Number(text));
      }),
    );
  });
});

it("40 signs are read, 41 are not; a plus stands only in front", () => {
  expect(parseNumber("1".repeat(40))).toBe(Number("1".repeat(40)));
  expect(parseNumber("1".repeat(41))).toBeUndefined();
  expect(parseNumber("+1")).toBe(1);
  expect(parseNumber("1+")).toBeUndefined();
  expect(parseNumber("1+1")).toBeUndefined();
});
