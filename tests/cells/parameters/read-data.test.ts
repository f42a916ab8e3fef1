import { describe, expect, it } from "vitest";
import { readData } from "../../../src/cells/parameters/read-data.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";

const read = (...rows: CellMatrix) => readData(rows, "data", "in");
const HEADER = ["Name", "Materials edition", "Tensile typical (ksi)"];

describe("a range of materials is laid over the edition that it names", () => {
  it("a row without a name says nothing else; rows with one keep what they do not say from that edition", () => {
    const table = read(HEADER, [null, "2026.2", null], ["316", null, 99]);
    expect(table.edition.name).toBe("2026.2");
    expect(table.get("316")!.tensileTypical!.source).toBe("the workbook's own row");
    expect(table.get("316")!.yieldTypical!.value).toBe(40); // producer's data sheet (read); 2026.1 has none
    expect(table.get("Plywood")!.cutOnly).toBe(true);
  });

  it("the number 2026.1 is that edition, with its method and its gauges", () => {
    const { edition } = read(HEADER, ["304", 2026.1, null]);
    expect(edition.name).toBe("2026.1");
    expect([edition.airMethod, edition.stainlessGauges]).toEqual([undefined, undefined]);
  });

  it.each<[what: string, rows: CellMatrix, says: RegExp]>([
    ["an edition that is none", [[null, "2025.9", null]], /^data row 2 column "Materials edition" must be an edition/],
    [
      "two editions",
      [
        ["304", "2026.2", null],
        ["316", "2026.1", null],
      ],
      /^data row 3 column "Materials edition" must be the same in all rows, "2026.2"; got "2026.1"/,
    ],
    ["a row without name and edition", [[null, null, 50]], /^data row 2 column "Name" must be given/],
  ])("refuses %s", (_, rows, says) => {
    expect(() => read(HEADER, ...rows)).toThrow(says);
  });

  it("refuses a column that it does not know: a misspelled property would leave its figures out", () => {
    expect(() =>
      readData(
        [
          ["Name", "Yield typcal (ksi)"],
          ["304", 40],
        ],
        "data",
        "in",
      ),
    ).toThrow(
      'data must be a table of materials and their properties; got column "Yield typcal (ksi)" is not read; nearest is "yield typical"',
    );
    expect(
      readData(
        [
          ["Name", "Yield typical (ksi)", "Notes"],
          ["304", 40, "mill"],
        ],
        "data",
        "in",
      ).get("304")?.yieldTypical?.value,
    ).toBeCloseTo(275.8, 1); // 40 ksi x 6.894757 (NIST SP 811)
  });
});
