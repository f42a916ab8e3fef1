/** Older builds of Excel pass blank cells of a range as 0 (office-js threads #1951, #4702, #5262). */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import type { Column } from "../../../src/cells/parameters/column.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { readBill } from "../../../src/cells/tables/bill.ts";
import { BILL_COLUMNS } from "../../../src/cells/tables/bill-columns.ts";
import { CellError, type CellMatrix } from "../../../src/units/cell.ts";

const PUNCHES: CellMatrix = [
  ["Punch", "Nose radius (in)", "Angle (deg)"],
  ["P1", 0.0625, 78],
];
const BRAKES: CellMatrix = [
  ["Brake", "Rated force (US ton)", "Bed length (in)", "Between housings (in)"],
  ["B", 150, 120, 100],
];
const dies = (...more: CellMatrix): CellMatrix => [
  ["Die", "Opening (in)", "Angle (deg)"],
  ["D1", 1, 80],
  ["D2", 2, 80],
  ...more,
];
const answer = (table: CellMatrix) => shopFunctions.call("BEND.DIE", ["A36", 0.25, 24, BRAKES, table, PUNCHES]).value;

describe("rows of a table", () => {
  it("of nothing but 0 are skipped like blank ones", () => {
    expect(answer(dies([null, null, null]))).toEqual(answer(dies()));
    expect(answer(dies([0, 0, 0], ["", 0, null]))).toEqual(answer(dies()));
  });
  it("with one figure are read, and a 0 that cannot be is refused", () => {
    const refused = answer(dies(["D3", 0, 80])) as CellError;
    expect(refused).toBeInstanceOf(CellError);
    expect(refused.message).toMatch(/must be .* more than 0; got 0/);
  });
});

describe("a line of the bill whose blank cells arrive as 0", () => {
  const HEADER = ["Part", "Material", "Thickness", "Quantity", "Width", "Flanges"];
  const LINE = ["A", "A36", 0.25, 4, 3, "2; 3"];
  const read = (header: string, cell: CellMatrix[number][number]) =>
    readBill(
      [
        [...HEADER, "Bend angles", header],
        [...LINE, 90, cell],
      ],
      "bill",
      {
        system: "in",
        materials: currentMaterials(),
        material: undefined,
      },
    )[0];
  /** A sharp corner, no spread, a hole on the face: there 0 says something, so the State cell must warn. */
  const SAYS_SOMETHING = [
    "Drawing radius",
    "Radius tolerance",
    "Hole distance",
    "Bend angles",
    "Cross angles",
    "Due",
    "Off center",
  ];
  const optional = Object.values<Column>(BILL_COLUMNS).filter(
    (column) => column.optional && column.headers[0] !== "Width",
  );

  it.each(optional.map(({ headers: [header] }) => header!).filter((header) => !SAYS_SOMETHING.includes(header)))(
    "%s: reads as if nothing stood there",
    (header) => {
      expect(read(header, 0)).toEqual(read(header, null));
      expect(read(header, null)).not.toHaveProperty("refusal");
    },
  );
  it("a 0 that a person typed as text is still read as one", () => {
    expect(read("Tolerance", "0")).toHaveProperty("refusal");
  });
});
