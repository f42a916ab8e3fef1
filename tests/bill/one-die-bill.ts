/** A bill of a shop with one die: 45 lines as they come on a stage job, with about a dozen that such a shop cannot bend. */
import { billTitles } from "../../src/cells/tables/bill-columns.ts";
import type { CellValue } from "../../src/units/cell.ts";
import { SHOP } from "../cells/example/tables.ts";
import type { RandomBill } from "./random-bill.ts";

const HEADERS = billTitles(
  ...(["material", "thickness", "quantity", "width", "flanges", "bendAngles"] as const),
  ...(["crossFlanges", "crossAngles", "holeDistance"] as const),
);
const LINES: readonly (readonly CellValue[])[] = [
  ["A36", "1/8", 20, 12, "2; 3", 90],
  ["A36", "1/8", 20, 48, "2; 2", 90],
  ["A36", "1/8", 10, 24, "2; 6; 2", "90; 90"],
  ["A1011 CS", "11 ga", 12, 36, "2; 4; 2", "90; 90"],
  ["A1011 CS", "10 ga", 12, 46, "2; 5; 2", "90; 90"],
  ["A36", "1/4", 40, 4, "2; 3", 90, null, null, 1.5],
  ["A36", "1/4", 24, 6, "3; 3", 90],
  ["A36", "1/4", 16, 4, "2.5; 4; 2.5", "90; 90"],
  ["A36", "3/16", 24, 10, "2; 4; 2", "90; 90"],
  ["A36", "3/16", 12, 24, "2; 6; 2", "90; 90"],
  ["A36", "3/16", 30, 3, "2; 6", 75],
  ["5052-H32", "1/8", 20, 24, "2; 3", 90],
  ["5052-H32", "1/8", 8, 36, "2; 6; 2", "90; 90"],
  ["5052-H32", "1/4", 8, 12, "3; 4", 90],
  ["6061-T6", "1/8", 8, 6, "2; 3", 90],
  ["6061-T6", "1/4", 8, 6, "3; 3", 90],
  ["304", "14 ga", 10, 20, "2; 8; 2", "90; 90"],
  ["304", "1/8", 10, 12, "2; 3", 90],
  ["304", "1/4", 8, 3, "3; 4", 90],
  ["A1011 CS", "12 ga", 20, 30, "2; 5", 90],
  ["A1011 CS", "14 ga", 20, 30, "2; 5", 90],
  ["A1008 CS", "16 ga", 20, 30, "2; 5", 90],
  ["A653 CS", "16 ga", 20, 30, "2; 5; 2", "90; 90"],
  ["A36", "1/8", 10, 12, "2; 3; 2", "90; -90"],
  ["A36", "1/8", 10, 12, "2; 2; 4; 2; 2", "-90; 90; 90; -90"],
  ["A1011 CS", "10 ga", 6, 18, "1.75; 3; 1.75", "90; -90"],
  ["A36", "1/4", 12, 6, "6", null],
  ["A36", "3/8", 6, 10, "12", null],
  ["A1011 CS", "12 ga", 4, null, "2; 12; 2", 90, "2; 18; 2", 90],
  ["A36", "1/4", 10, 4, "1; 3", 90],
  ["A36", "1/4", 10, 4, "2; 3", 90, null, null, 0.25],
  ["A1011 CS", "10 ga", 2, 130, "2; 3", 90],
  ["A36", "1/4", 6, 110, "3; 3", 90],
  ["A36", "1/2", 6, 6, "4; 4", 90],
  ["A36", "3/8", 6, 6, "3; 4", 90],
  ["A36", "1/8", 10, 20, "4; 4; 4", "90; 90"],
  ["A36", "1/8", 10, 20, "6; 4; 6", "90; 90"],
  ["A36", "1/8", 10, 20, "3; 6; 3", "90; 90"],
  ["A1011 CS", "11 ga", 10, 20, "2; 3", 45],
  ["A1011 CS", "11 ga", 10, 20, "2; 3", 120],
  ["A1011 CS", "11 ga", 10, 20, "2; 3", 135],
  ["5052-H32", "1/16", 10, 20, "2; 3", 90],
  ["A36", "3/16", 8, 72, "2; 4; 2", "90; 90"],
  ["A36", "1/4", 8, 36, "2.5; 6; 2.5", "90; 90"],
  ["A36", "1/8", 200, 2, "1.75; 1.75", 90],
];

const PUNCH_HEADERS = ["Punch", "Nose radius (in)", "Angle (deg)"];

const { job: _, ...SHOP_WITHOUT_JOB } = SHOP;
const STOCK = SHOP.stock as readonly (readonly CellValue[])[];
/** What such a shop has on its rack beside the sheets of the invented one. */
const PLATE = STOCK[0]!.map(
  (title) =>
    ({ Stock: "Plate 1/8", Material: "A36", Thickness: "1/8", "Length (in)": 120, "Width (in)": 48, Price: 190 })[
      String(title)
    ] ?? null,
);

export const oneDieBill: RandomBill = {
  bill: [
    ["Part", ...HEADERS, "Holes", "Hole diameter"],
    ...LINES.map((line, i) => {
      const cells = HEADERS.map((_, column) => line[column] ?? null);
      const holes = cells[HEADERS.indexOf("Hole distance")] === null ? [null, null] : [2, 0.4375];
      return [`A${i + 1}`, ...cells, ...holes];
    }),
  ],
  tables: {
    ...SHOP_WITHOUT_JOB,
    stock: [...STOCK, PLATE] as CellValue[][],
    dies: [
      ["Die", "Opening (in)", "Angle (deg)", "Length (in)"],
      ["V 2", 2, 85, 120],
    ],
    punches: [
      [...PUNCH_HEADERS, "Height (in)", "Body width (in)", "Relief depth (in)", "Relief width (in)"],
      ["Straight", 0.0625, 78, null, null, null, null],
      ["Gooseneck", 0.0625, 78, 8, 1, 0.75, 6.5],
    ],
  },
};

/** The same where nobody has measured the gooseneck. */
export const oneDieBillUnmeasured: RandomBill = {
  ...oneDieBill,
  tables: {
    ...oneDieBill.tables,
    punches: oneDieBill.tables.punches!.map((row) => row.slice(0, PUNCH_HEADERS.length)),
  },
};
