import fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { parseLength } from "../../src/units/parse-length.ts";

const inches = (value: number): number => unit(value, "inch").toNumber("mm");
const feet = (value: number): number => unit(value, "foot").toNumber("mm");

describe("lengths that bring their own unit", () => {
  it.each([
    ["3 mm", 3],
    ["3mm", 3],
    ["3,5 mm", 3.5],
    ["3 MM", 3],
    ["2.5 cm", 25],
    ["1.5 m", 1500],
    ["0.25 in", inches(0.25)],
    ["1/4 in", inches(0.25)],
    ["1/4 inch", inches(0.25)],
    ["2 inches", inches(2)],
    ['1/4"', inches(0.25)],
    ["1/4 ″", inches(0.25)],
    ["1/4”", inches(0.25)],
    ["1/4''", inches(0.25)],
    ["1-1/2 in", inches(1.5)],
    ["1 1/2 in.", inches(1.5)],
    ["60 thou", inches(0.06)],
    ["2 ft", feet(2)],
    ["2'", feet(2)],
    ["2 ft 6-1/2 in", feet(2) + inches(6.5)],
    ["2 ft 6 1/2 in", feet(2) + inches(6.5)],
    ["2'6\"", feet(2) + inches(6)],
    ["2' 6", feet(2) + inches(6)],
    ["2'-6 1/2\"", feet(2) + inches(6.5)],
    ["2 ft - 6 in", feet(2) + inches(6)], // the dash of a drawing, not a minus
    ["10 feet 3 inches", feet(10) + inches(3)],
    ["-3 mm", -3],
  ])("%j is %d mm in either system", (text, value) => {
    expect(parseLength(text, "in")).toBeCloseTo(value, 9);
    expect(parseLength(text, "mm")).toBeCloseTo(value, 9);
  });

  it.each([
    ["0.25", 0.25],
    ["1/4", 0.25],
    ["1-1/2", 1.5],
    ["4,5", 4.5],
  ])("%j has the unit of the call", (text, value) => {
    expect(parseLength(text, "in")).toBeCloseTo(inches(value), 9);
    expect(parseLength(text, "mm")).toBeCloseTo(value, 12);
  });

  it.each(["1,234 mm", "1,234", "2 ft 1,234 in"])("%j may be read two ways", (text) => {
    expect(parseLength(text, "mm")).toBe("ambiguous");
  });

  it.each([
    "abc",
    "3 kg",
    "3 ksi",
    "mm",
    "in",
    "10 ga",
    "3 mm 4 mm",
    "-2 ft 6 in",
    "6 in 2 ft",
    "3 constructor",
    "3 __proto__",
    "",
    `${"1".repeat(70)} mm`,
  ])("%j is not one", (text) => {
    expect(parseLength(text, "mm")).toBeUndefined();
  });

  it("agrees with mathjs on any whole figure in any unit", () => {
    const units = { mm: "mm", cm: "cm", m: "m", in: "inch", ft: "foot" } as const;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000 }),
        fc.constantFrom(...(Object.keys(units) as (keyof typeof units)[])),
        (value, name) => {
          const length = parseLength(`${value} ${name}`, "in");
          if (length === "ambiguous") throw new Error("no comma was written");
          expect(length! / (unit(value, units[name]).toNumber("mm") || 1)).toBeCloseTo(value === 0 ? 0 : 1, 12);
        },
      ),
    );
  });
});

describe("lengths at the edges of what is one", () => {
  it("blanks around count for nothing; 60 signs are read, 61 are not", () => {
    expect(parseLength("  3 mm  ", "in")).toBe(3);
    expect(parseLength(`3${" ".repeat(55)} mm.`, "in")).toBe(3);
    expect(parseLength(`3${" ".repeat(56)} mm.`, "in")).toBeUndefined();
  });
  it("no inches over are as good as none; a comma in either part that may be two things is ambiguous", () => {
    expect(parseLength("2 ft 0 in", "in")).toBeCloseTo(feet(2), 9);
    expect(parseLength("0 ft 3 in", "in")).toBeCloseTo(inches(3), 9);
    expect(parseLength("1,234 ft 3 in", "in")).toBe("ambiguous");
    expect(parseLength("2 ft 1,234 in", "in")).toBe("ambiguous");
    expect(parseLength("2 ft 1/0 in", "in")).toBeUndefined();
    expect(parseLength("1/0 ft 2 in", "in")).toBeUndefined();
    expect(parseLength("1/0 mm", "in")).toBeUndefined();
    expect(parseLength("3 constructor", "in")).toBeUndefined();
  });
});
