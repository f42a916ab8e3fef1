/** What an invented shop makes again and again, test strips it has bent, and bends it wants to know. */

import type { InputColumn } from "../../../../job/building/table-sheet.ts";
import type { CellValue } from "../../../../units/cell.ts";

type Rows = readonly (readonly CellValue[])[];

export const PART_COLUMNS: readonly InputColumn[] = [
  { header: "Part", width: 24 },
  { header: "Material", width: 12 },
  { header: "Thickness", width: 11 },
  { header: "Quantity", width: 10, number: true },
  { header: "Width", width: 9, number: true },
  { header: "Flanges", width: 16 },
  { header: "Bend angles", width: 12 },
  { header: "Die", width: 10 },
  { header: "Punch", width: 12 },
  { header: "Holes", width: 8, number: true },
  { header: "Hole diameter", width: 10, number: true },
  { header: "Operations", width: 20 },
];
export const PARTS: Rows = [
  ["Shelf angle", "A1011 CS", "10 ga", 50, 6, "2; 3", "90", "V 1", "Plain", 3, 0.3125, "Deburr"],
  ["Tray", "A653 CS", "16 ga", 20, 24, "1; 6; 1", "90; 90", "V 5/8", "Plain", null, null, "Pack"],
  ["Base foot", "A36", "1/4", 30, 4, "2; 3", "90", "V 2", "Plain", 2, 0.5625, "Deburr"],
  ["Cover", "5052-H32", "1/8", 12, 18, "1; 8; 1", "90; 90", "V 1", "Plain", null, null, "Deburr; Pack"],
  ["Splash rail", "304", "14 ga", 16, 30, "1; 4", "90", "V 5/8", "Plain", 4, 0.25, "Deburr"],
  ["Hook plate", "A36", "3/16", 80, 2, "1.5; 4", "60", "V 1-1/2", "Plain", 1, 0.4375, "Deburr"],
];

export const STRIP_COLUMNS: readonly InputColumn[] = [
  { header: "Material", width: 13 },
  { header: "Thickness", width: 11 },
  { header: "Blank (in)", width: 11, number: true },
  { header: "Flange 1 (in)", width: 11, number: true },
  { header: "Flange 2 (in)", width: 11, number: true },
  { header: "Bend angle (deg)", width: 12, number: true },
  { header: "Opening (in)", width: 11, number: true },
  { header: "Punch nose (in)", width: 12, number: true },
];
export const STRIPS: Rows = [
  ["A36", "1/4", 5, 2.002, 3.474, 90, 2, 0.0625],
  ["A36", "1/4", 5, 1.998, 3.481, 90.2, 2, 0.0625],
  ["A36", "3/16", 5, 2.001, 3.357, 90, 1.5, 0.0625],
  ["A1011 CS", "10 ga", 4.5, 2.004, 2.765, 90.1, 1, 0.0625],
  ["A1011 CS", "10 ga", 4.5, 1.997, 2.77, 89.9, 1, 0.0625],
  ["A1011 CS", "10 ga", 4.5, 2, 2.766, 90, 1, 0.0625],
  ["5052-H32", "1/8", 4.5, 2.001, 2.727, 90, 1, 0.0625],
  ["5052-H32", "1/8", 4.5, 1.999, 2.731, 90.3, 1, 0.0625],
  ["5052-H32", "1/8", 4.5, 2.003, 2.724, 89.8, 1, 0.0625],
];

export const BED_COLUMNS: readonly InputColumn[] = [
  { header: "Along (in)", width: 14, number: true },
  { header: "Bend angle (deg)", width: 16, number: true },
];
export const BED: Rows = [
  [6, 90.1],
  [33, 89.6],
  [60, 89.3],
  [87, 89.7],
  [114, 90.4],
];

export const BEND_COLUMNS: readonly InputColumn[] = [
  { header: "Bend", width: 14 },
  { header: "Material", width: 12 },
  { header: "Thickness", width: 11 },
  { header: "Flanges", width: 12 },
  { header: "Bend angle (deg)", width: 10, number: true },
  { header: "Bend length (in)", width: 10, number: true },
  { header: "Die", width: 10 },
  { header: "Punch", width: 11 },
  { header: "Drawing radius (in)", width: 10, number: true },
  { header: "Radius tolerance (in)", width: 11, number: true },
];
export const BENDS: Rows = [
  ["Shelf angle", "A1011 CS", "10 ga", "2; 3", 90, 6, "V 1", "Plain", 0.125, 0.03],
  ["Base foot", "A36", "1/4", "2; 3", 90, 4, "V 2", "Plain", 0.3125, 0.03],
  ["Hook plate", "A36", "3/16", "1.5; 4", 60, 2, "V 1-1/2", "Plain", 0.1875, 0.03],
  ["Cover end", "5052-H32", "1/8", "1; 8", 90, 18, "V 1", "Plain", 0.0625, 0.01],
  ["Splash rail", "304", "14 ga", "1; 4", 90, 30, "V 5/8", "Plain", 0.125, 0.03],
];
