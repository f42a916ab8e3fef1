/**
 * The shop of the sample: machines and tools that exist nowhere, in sizes chosen so that the bill meets every limit.
 * Real figures come from the plates of the shop's own machines.
 */
import type { CellValue } from "../../../units/cell.ts";

/** One Excel Table: its header row and its rows. */
export interface ShopTable {
  readonly name: string;
  readonly title: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

export const BRAKES: ShopTable = {
  name: "Brakes",
  title: "Press brakes (the first row bends the bill)",
  headers: ["Brake", "Rated force (US ton)", "Bed length (in)", "Between housings (in)"],
  rows: [
    ["Brake 1", 150, 120, 92],
    ["Brake 2", 60, 50, 42],
  ],
};

export const DIES: ShopTable = {
  name: "Dies",
  title: "V dies",
  headers: ["Die", "Opening (in)", "Angle (deg)", "Shoulder radius (in)", "Rating (US ton/ft)", "Length (in)"],
  rows: [
    ["V 3/8", 0.375, 80, 0.03, 15, 120],
    ["V 5/8", 0.625, 80, 0.06, 18, 120],
    ["V 3/4", 0.75, 80, 0.07, 20, 120],
    ["V 1", 1, 80, 0.09, 24, 120],
    ["V 1 wide", 1, 88, 0.09, 24, 120],
    ["V 1-1/2", 1.5, 78, 0.12, 30, 120],
    ["V 2", 2, 78, 0.16, 40, 120],
    ["V 2-1/2", 2.5, 78, 0.18, 44, 80],
  ],
};

export const PUNCHES: ShopTable = {
  name: "Punches",
  title: "Punches",
  headers: ["Punch", "Nose radius (in)", "Angle (deg)", "Rating (US ton/ft)", "Length (in)"],
  rows: [
    ["Plain", 0.0625, 75, 36, 120],
    ["Knife", 0.03, 60, 9, 80],
    ["Gooseneck", 0.0625, 75, 16, 48],
    ["Round 1/4", 0.25, 75, 30, 120],
    ["Round 1/2", 0.5, 75, 36, 80],
  ],
};

export const SHEARS: ShopTable = {
  name: "Shears",
  title: "Guillotine shears (the first row cuts the bill)",
  headers: [
    "Shear",
    "Rated thickness (in)",
    "Rated material",
    "Cut length (in)",
    "Least hold-down (in)",
    "Knife gap (in)",
  ],
  rows: [
    ["Shear 1", 0.3125, "A36", 98, 1.5, 0.006],
    ["Shear 2", 0.1345, "A1011 CS", 122, 1, 0.004],
  ],
};

export const STOCK: ShopTable = {
  name: "Stock",
  title: "Sheets on the rack",
  headers: ["Material", "Thickness", "Length (in)", "Width (in)", "Sheets"],
  rows: [
    ["A36", "1/4", 120, 48, 6],
    ["A36", "3/16", 120, 48, 8],
    ["A1011 CS", "10 ga", 120, 48, 10],
    ["A1011 CS", "12 ga", 120, 48, 6],
    ["A1011 CS", "3 mm", 120, 60, 4],
    ["A653 CS", "16 ga", 120, 48, 5],
    ["304", "14 ga", 120, 48, 4],
    ["304", "1/4", 96, 48, 1],
    ["5052-H32", "1/8", 120, 48, 6],
    ["5052-H32", "4,5 mm", 96, 48, 2],
    ["6061-T6", "1/8", 96, 48, 3],
  ],
};

export const SHOP_TABLES: readonly ShopTable[] = [BRAKES, DIES, PUNCHES, SHEARS, STOCK];
