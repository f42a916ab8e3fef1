import { describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../src/cells/call/call.ts";
import { findRecord, shopFunctions } from "../../src/cells/catalogue.ts";
import type { CellMatrix } from "../../src/units/cell.ts";
import { CellError } from "../../src/units/cell.ts";

const call = (name: string, ...given: Argument[]) => callRecord(findRecord(name)!, given).value;
const blank = null;

describe("who speaks first", () => {
  it.each([
    ["thickness before radius", ["BEND.SETBACK", "abc", "abc", 90], "thickness"],
    ["radius before angle", ["BEND.SETBACK", 0.1, -1, 200], "radius"],
    [
      "a material before the units it is not read in",
      ["BLANK.WEIGHT", "unobtainium", 0.25, 1, 1, blank, "cm"],
      "material",
    ],
    [
      "a length before wrong units, although units rule how it is read",
      ["BEND.SETBACK", "abc", 1, 90, "cm"],
      "thickness",
    ],
    ["wrong units where everything before them is right", ["BEND.SETBACK", 0.1, 1, 90, "cm"], "units"],
    [
      "a thickness before an unknown edition",
      ["BLANK.WEIGHT", "A36", "abc", 1, 1, blank, blank, "1999.1"],
      "thickness",
    ],
    [
      "an unknown edition where everything before it is right",
      ["BLANK.WEIGHT", "A36", 0.25, 1, 1, blank, blank, "1999.1"],
      "data",
    ],
  ] as const)("%s", (_, [name, ...given], speaker) => {
    expect((call(name, ...given) as CellError).message).toMatch(new RegExp(`^${speaker} must be `));
  });

  it("an error cell speaks in argument order like a refusal", () => {
    const broken = new CellError("#REF!");
    expect(call("BEND.SETBACK", broken, "abc", 90)).toMatchObject({ code: "#REF!" });
    expect(call("BEND.SETBACK", "abc", broken, 90)).toMatchObject({ code: "#VALUE!" });
  });
});

describe("units", () => {
  it("rule plain numbers and the result, not texts with a unit of their own", () => {
    const inches = call("BLANK.WEIGHT", "A36", 0.25, 96, 48) as number;
    const kilograms = call("BLANK.WEIGHT", "A36", 6.35, 96 * 25.4, 48 * 25.4, blank, "mm") as number;
    expect(kilograms).toBeCloseTo(inches * 0.45359237, 9);
    expect(call("BLANK.WEIGHT", "A36", '1/4"', "8 ft", "4 ft", blank, "mm")).toBeCloseTo(kilograms, 9);
    expect(call("BLANK.WEIGHT", "A36", "6.35 mm", "2438.4 mm", "1219.2 mm")).toBeCloseTo(inches, 9);
  });

  it("case and outer blanks do not matter", () => {
    expect(call("BEND.SETBACK", 1, 1, 90, " MM ")).toBeCloseTo(2, 12);
  });

  it("nothing is remembered from one call to the next", () => {
    const first = call("BEND.TONNAGE", "A36", 0.25, 120, 2);
    call("BEND.TONNAGE", "A36", 6, 3000, 50, blank, blank, "mm");
    expect(call("BEND.TONNAGE", "A36", 0.25, 120, 2)).toBe(first);
  });
});

describe("data", () => {
  const stronger: CellMatrix = [
    ["Source", "tensile TYPICAL [MPa]", "Name"],
    ["mill certificate", 500, "A36"],
  ];

  it("blank and the current edition's name are the same", () => {
    expect(call("BLANK.WEIGHT", "A36", 0.25, 96, 48, blank, blank, "2026.1")).toBe(
      call("BLANK.WEIGHT", "A36", 0.25, 96, 48),
    );
    expect(call("BLANK.WEIGHT", "A36", 0.25, 96, 48, blank, blank, 2026.1)).toBe(
      call("BLANK.WEIGHT", "A36", 0.25, 96, 48),
    );
  });

  it("an unknown edition has no answer", () => {
    expect(call("BLANK.WEIGHT", "A36", 0.25, 96, 48, blank, blank, "2031.4")).toMatchObject({ code: "#N/A" });
  });

  it("a range overrides what it names, header in any order and case, unit in the header", () => {
    const own = call("BEND.TONNAGE", "A36", 6, 1000, 50, "Groover", blank, "mm", stronger) as number;
    expect(own).toBeCloseTo((1.33 * 500 * 1000 * 36) / 50 / 1000, 9);
    // What it does not name stays.
    expect(call("BEND.TONNAGE", "A36", 6, 1000, 50, "Groover", "minimum", "mm", stronger)).toBe(
      call("BEND.TONNAGE", "A36", 6, 1000, 50, "Groover", "minimum", "mm"),
    );
    expect(call("BEND.TONNAGE", "304", 6, 1000, 50, "Groover", blank, "mm", stronger)).toBe(
      call("BEND.TONNAGE", "304", 6, 1000, 50, "Groover", blank, "mm"),
    );
  });

  it("a plain number in a column without a unit is in the unit of the call", () => {
    const table = (strength: number) => [
      ["Name", "Tensile typical"],
      ["own", strength],
    ];
    const metric = call("BEND.TONNAGE", "own", 6, 1000, 50, "Groover", blank, "mm", table(500)) as number;
    expect(metric).toBeCloseTo((1.33 * 500 * 1000 * 36) / 50 / 1000, 9);
    const inch = call("BEND.TONNAGE", "own", 0.25, 120, 2, "Groover", blank, "in", table(58)) as number;
    expect(inch).toBeCloseTo((1.33 * 58 * 120 * 0.0625) / 2 / 2, 9);
  });

  it("a new material is known, and what it lacks is refused by name", () => {
    const own = [
      ["Name", "Density (g/cm3)"],
      ["zinc", 7.14],
    ];
    expect(call("BLANK.WEIGHT", "zinc", 1, 1000, 1000, blank, "mm", own)).toBeCloseTo(7.14, 9);
    expect(call("BEND.TONNAGE", "zinc", 1, 1000, 10, blank, blank, "mm", own)).toMatchObject({ code: "#N/A" });
  });

  it.each([
    ["no name column", [["Density (g/cm3)"], [7]], "data must be a range whose first row is the header"],
    [
      "an unknown unit",
      [
        ["Name", "Density (stone)"],
        ["A36", 7],
      ],
      'data column "density" must be in one of the units',
    ],
    [
      "text for a figure",
      [
        ["Name", "Density (g/cm3)"],
        ["A36", "heavy"],
      ],
      'data row 2 column "density" must be',
    ],
    [
      "a negative figure",
      [
        ["Name", "Density (g/cm3)"],
        ["A36", -7],
      ],
      'data row 2 column "density" must be',
    ],
    [
      "a boolean",
      [
        ["Name", "Density (g/cm3)"],
        ["A36", true],
      ],
      'data row 2 column "density" must be',
    ],
    [
      "an error cell",
      [
        ["Name", "Density (g/cm3)"],
        ["A36", new CellError("#REF!")],
      ],
      'data row 2 column "density" must be',
    ],
    [
      "a wrong gauge series",
      [
        ["Name", "Gauge series"],
        ["A36", "lead"],
      ],
      'data row 2 column "Gauge series" must be',
    ],
  ] as [string, CellMatrix, string][])("%s is named by row and column", (_, table, start) => {
    const answer = call("BLANK.WEIGHT", "A36", 1, 1, 1, blank, "mm", table);
    expect(answer).toMatchObject({ code: "#VALUE!" });
    expect((answer as CellError).message?.startsWith(start), (answer as CellError).message).toBe(true);
  });
});

describe("materials", () => {
  it.each([
    ["a36", "A36"],
    [" ASTM A572 Gr. 50 ", "A572-50"],
    [304, "304"],
    ["ss304", "304"],
    ["6061 T6", "6061-T6"],
  ])("%j is %s", (given, name) => {
    expect(call("BLANK.WEIGHT", given, 0.25, 10, 10)).toBe(call("BLANK.WEIGHT", name, 0.25, 10, 10));
  });

  it.each([
    ["6061", /"6061-T4" or "6061-T6"/],
    ["steel", /name the grade/],
    ["aluminum", /alloy and temper/],
    ["A63", /nearest is "A36"/],
    ["constructor", /must be a material in the table/],
    ["__proto__", /must be a material in the table/],
  ])("%j is not guessed: %s", (given, hint) => {
    const answer = call("BLANK.WEIGHT", given, 0.25, 10, 10);
    expect(answer).toMatchObject({ code: "#N/A" });
    expect((answer as CellError).message).toMatch(hint);
  });
});

describe("thicknesses", () => {
  it.each([
    ["1/4", 0.25],
    ["0,25", 0.25],
    ["6.35 mm", 0.25],
    ["3 ga", 0.2391],
    ["10 ga", 0.1345],
    ["10 Gauge", 0.1345],
  ])("%j of A36 is %d in", (given, inches) => {
    expect((call("BLANK.WEIGHT", "A36", given, 10, 10) as number) / (100 * 0.284)).toBeCloseTo(inches, 4);
  });

  it.each([
    ["1,234", /comma could mean either/],
    ["50 ga", /^gauge must be/],
    ["3 kg", /^thickness must be/],
    [46026, /1\/4/],
    [true, /^thickness must be .* got TRUE/],
  ])("%j is refused", (given, words) => {
    expect((call("BLANK.WEIGHT", "A36", given, 10, 10) as CellError).message).toMatch(words);
  });

  it("a gauge without a material is refused with the way out", () => {
    expect((call("BEND.SETBACK", "10 ga", 0.1, 90) as CellError).message).toMatch(/^thickness must be .*material/);
  });
});

describe("names", () => {
  it("are found in any case, with dots or underscores", () => {
    for (const name of ["BEND.TONNAGE", "bend.tonnage", "BEND_TONNAGE", "Bend_Tonnage"])
      expect(shopFunctions.resolve(name)).toBe("BEND.TONNAGE");
    expect(shopFunctions.resolve("BEND.TONS")).toBeUndefined();
    expect(shopFunctions.resolve("constructor")).toBeUndefined();
  });
});
