import { describe, expect, it } from "vitest";
import { type BillLine, isLine } from "../../../src/bill/nouns/line.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { readBill } from "../../../src/cells/tables/bill.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

const context = () => ({ system: "in" as const, materials: currentMaterials(), material: undefined });
const HEADER = ["Part", "Material", "Thickness", "Quantity", "Width", "Flanges", "Bend angles"];
const GOOD: CellValue[] = ["A", "A36", 0.25, 4, 3, "2; 3", 90];
const read = (header: CellValue[], ...rows: CellValue[][]) => readBill([header, ...rows], "bill", context());
const line = (header: CellValue[], row: CellValue[]): BillLine => {
  const [found] = read(header, row);
  if (!found || !isLine(found)) throw new Error(found && "refusal" in found ? found.refusal.message : "none");
  return found;
};
const refusal = (header: CellValue[], row: CellValue[]): string => {
  const [found] = read(header, row);
  return found && "refusal" in found ? found.refusal.message : "read";
};
const withCell = (column: string, cell: CellValue): CellValue[] =>
  GOOD.map((old, i) => (HEADER[i] === column ? cell : old));

describe("a bill", () => {
  it("finds its columns in any order and by any of their names, and ignores the others", () => {
    const found = line(
      ["Qty", "Color", "Angles", "FLANGES", "thickness", "Bend length", "material", "Mark"],
      [4, "red", 90, "2;3", "1/4", 3, "A36", "A"],
    );
    expect(found).toMatchObject({ part: "A", quantity: 4, thickness: 6.35, width: expect.closeTo(76.2, 9) });
    expect(found.main).toEqual({
      flanges: [50.8, 76.2].map((v) => expect.closeTo(v, 9)),
      angles: [90],
      bendLength: expect.closeTo(76.2, 9),
    });
  });

  it.each([
    ["inches of the call", "Thickness", 0.25, 6.35],
    ["the header's unit", "Thickness (mm)", 3, 3],
    ["a text's own unit before the header's", "Thickness (mm)", "1/8 in", 3.175],
    ["a gauge of its material", "Thickness (mm)", "10 ga", (5.625 / 41.82) * 25.4],
    ["a decimal comma", "Thickness (mm)", "4,5", 4.5],
  ])("reads %s", (_, header, cell, mm) => {
    expect(
      line([...HEADER.slice(0, 2), header, ...HEADER.slice(3)], withCell("Thickness", cell)).thickness,
    ).toBeCloseTo(mm, 9);
  });

  it("the header's unit holds for lists too; one angle stands for all", () => {
    const found = line(
      [...HEADER.slice(0, 5), "Flanges (mm)", "Bend angles (deg)"],
      ["A", "A36", 0.25, 4, 3, "20; 40; 20", "90"],
    );
    expect(found.main.flanges).toEqual([20, 40, 20]);
    expect(found.main.angles).toEqual([90, 90]);
  });

  it("operations: names, and amounts where they stand", () => {
    const found = line([...HEADER, "Operations"], [...GOOD, "Tap 3; Hand deburr; weld 1,5;"]);
    expect(found.operations).toEqual([
      { station: "Tap", amount: 3 },
      { station: "Hand deburr", amount: undefined },
      { station: "weld", amount: 1.5 },
    ]);
  });

  it("blank rows are skipped, rows keep their number", () => {
    const rows = read(
      HEADER,
      GOOD,
      HEADER.map(() => null),
      GOOD,
    );
    expect(rows.map(({ row }) => row)).toEqual([2, 4]);
  });
});

describe("a row that cannot be a part says which cell is wrong, and why", () => {
  it.each([
    [
      "Material",
      "cheese",
      /^line 1 \(row 2 of the range\) column "Material" must be a material in the table; got "cheese"/,
    ],
    ["Material", null, /^line 1 \(row 2 of the range\) column "Material" must be given; got nothing/],
    [
      "Thickness",
      -4,
      /^line 1 \(row 2 of the range\) column "Thickness" must be a thickness of more than 0 and at most 11.81 in \(300 mm\); got -4$/,
    ],
    ["Thickness", 46082, /; got 46082; the number is a date/],
    ["Thickness", "1,234", /; got "1,234"; write 1234 or 1.234/],
    ["Thickness", "99 ga", /^line 1 \(row 2 of the range\) column "Thickness" must be a steel gauge .*; got 99 ga/],
    [
      "Quantity",
      1.5,
      /^line 1 \(row 2 of the range\) column "Quantity" must be a whole number from 1 to 1000000; got 1.5/,
    ],
    ["Quantity", true, /column "Quantity" must be a whole number .*; got TRUE/],
    ["Width", 46082, /column "Width" must be a length of more than 0 and at most .*; got 46082; the number is a date/],
    ["Width", null, /column "Width" must be given, or "Cross flanges"/],
    ["Flanges", "2; ; 3", /column "Flanges" must be a list without gaps/],
    ["Flanges", "2; -3", /column "Flanges" must be a number of more than 0; got "-3"/],
    [
      "Bend angles",
      "90; 45",
      /column "Bend angles" must be one angle for all bends, or one fewer than the flanges \(1\); got "90; 45"/,
    ],
    ["Bend angles", 180, /^A closed hem \(180 deg\) is not a bend over a V: enter the acute bend that your dies reach/],
    ["Bend angles", -179, /^A closed hem/],
    ["Bend angles", 181, /column "Bend angles" must be a number from -180 to 180 degrees; got 181/],
  ] as [string, CellValue, RegExp][])("%s %s", (column, cell, message) => {
    expect(refusal(HEADER, withCell(column, cell))).toMatch(message);
  });

  it("holes need their diameter, notches their path", () => {
    expect(refusal([...HEADER, "Holes"], [...GOOD, 2])).toMatch(
      /column "Hole diameter" must be given where there are holes/,
    );
    expect(refusal([...HEADER, "Notches"], [...GOOD, 2])).toMatch(
      /column "Notch path" must be given where there are notches/,
    );
  });
});

describe("a range that is not a bill is refused as a whole", () => {
  it.each([
    ["nothing", [[null]], /^bill must be given/],
    ["a header alone", [HEADER], /^bill must be a range with at least one row below its header/],
    ["a missing column", [HEADER.slice(1), GOOD.slice(1)], /column "Part"; got "Material, Thickness/],
    [
      "a unit that is none",
      [HEADER.map((h) => (h === "Width" ? "Width (parsec)" : h)), GOOD],
      /^bill column "Width" must be in one of the units in, .*; got "parsec"/,
    ],
  ] as [string, CellMatrix, RegExp][])("%s", (_, range, message) => {
    expect(() => readBill(range, "bill", context())).toThrow(
      expect.objectContaining({ message: expect.stringMatching(message) }),
    );
  });
});
