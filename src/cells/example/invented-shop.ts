/**
 * The shop of the sample: machines, tools, sheets, people's pay and hours that exist nowhere, in sizes chosen so that
 * the bill meets every limit. Real figures come from the plates, papers and clocks of the shop's own.
 */
import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import type { CellValue } from "../../units/cell.ts";

/** One Excel Table: its header row and its rows. */
export interface ShopTable {
  readonly name: string;
  readonly title: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

export const BRAKES: ShopTable = {
  name: "Brakes",
  title: "Press brakes",
  headers: [
    "Brake",
    "Rated force (US ton)",
    "Bed length (in)",
    "Between housings (in)",
    "Open stroke (in)",
    "Approach speed (in/min)",
    "Bend speed (in/min)",
    "Return speed (in/min)",
    "Gauge speed (in/min)",
    "Throat (in)",
    "Daylight (in)",
  ],
  rows: [
    ["Brake 1", 150, 120, 92, 4, 280, 22, 240, 500, 8, 20],
    ["Brake 2", 60, 50, 42, 3, 240, 30, 240, 300, 6, 18],
  ],
};

export const DIES: ShopTable = {
  name: "Dies",
  title: "V dies",
  headers: [
    "Die",
    "Opening (in)",
    "Angle (deg)",
    "Shoulder radius (in)",
    "Rating (US ton/ft)",
    "Length (in)",
    "Block width (in)",
    "Block height (in)",
  ],
  rows: [
    ["V 3/8", 0.375, 80, 0.03, 15, 120, 1, 2.5],
    ["V 5/8", 0.625, 80, 0.06, 18, 120, 1.25, 2.5],
    ["V 3/4", 0.75, 80, 0.07, 20, 120, 1.5, 2.5],
    ["V 1", 1, 80, 0.09, 24, 120, 1.75, 3],
    ["V 1 wide", 1, 88, 0.09, 24, 120, 1.75, 3],
    ["V 1-1/2", 1.5, 78, 0.12, 30, 120, 2.5, 3.5],
    ["V 2", 2, 78, 0.16, 40, 120, 3, 4],
    ["V 2-1/2", 2.5, 78, 0.18, 44, 80, 3.5, 4],
  ],
};

export const PUNCHES: ShopTable = {
  name: "Punches",
  title: "Punches (relief: how far a gooseneck's throat lies behind the line of its tip, and how high its mouth is)",
  headers: [
    "Punch",
    "Nose radius (in)",
    "Angle (deg)",
    "Rating (US ton/ft)",
    "Length (in)",
    "Height (in)",
    "Body width (in)",
    "Relief depth (in)",
    "Relief width (in)",
    "Sections (in)",
  ],
  rows: [
    ["Plain", 0.0625, 75, 36, 120, 5, 0.75, null, null, "60; 20; 12; 10; 8; 5; 3; 2; 1.5; 1; 0.75; 0.5"],
    ["Knife", 0.03, 60, 9, 80, 5, 0.5, null, null, null],
    ["Gooseneck", 0.0625, 75, 16, 48, 8, 1, 0.75, 6.5, "24; 10; 6; 4; 2; 1; 1"],
    ["Round 1/4", 0.25, 75, 30, 120, 5, 0.75, null, null, null],
    ["Round 1/2", 0.5, 75, 36, 80, 5, 1, null, null, null],
  ],
};

export const SHEARS: ShopTable = {
  name: "Shears",
  title: "Guillotine shears",
  headers: [
    "Shear",
    "Rated thickness (in)",
    "Rated material",
    "Cut length (in)",
    "Least hold-down (in)",
    "Blade gap (in)",
    "Strokes per minute",
    "Cuts per blank",
    "Least remnant (in)",
    "Gauge reach (in)",
    "Nearest gauge (in)",
    "Front stop reach (in)",
    "Cut to mark",
    "Stacks",
    "Long stacks",
  ],
  rows: [
    ["Shear 1", 0.3125, "A36", 98, 1.5, 0.012, 18, 2.5, 10, 42, 0.5, 60, "yes", 4, 2],
    ["Shear 2", 0.1345, "A1011 CS", 122, 1, 0.004, 24, 2.5, 10, 36, 0.375, 96, "yes", 4, 2],
  ],
};

export const WATERJETS: ShopTable = {
  name: "Waterjets",
  title: "Waterjet (speed factor: our timed cut over the formula)",
  headers: [
    "Waterjet",
    "Pressure (ksi)",
    "Orifice (in)",
    "Abrasive rate (lb/min)",
    "Nozzle diameter (in)",
    "Quality",
    "Highest feed (in/min)",
    "Pierce time (s)",
    "Speed factor",
    "Bed length (in)",
    "Bed width (in)",
  ],
  rows: [["Jet 1", 50, 0.014, 0.8, 0.04, 3, 120, 9, 0.95, 144, 72]],
};

/** Length runs along the rolling direction. */
export const STOCK: ShopTable = {
  name: "Stock",
  title: "Sheets on the rack and on offer (no number: as many as wanted)",
  headers: [
    "Stock",
    "Material",
    "Thickness",
    "Length (in)",
    "Width (in)",
    "Sheets",
    "Price",
    "Lead days",
    "Remnant worth",
  ],
  rows: [
    ["Plate 1/4", "A36", "1/4", 120, 48, null, 372, 2, 0.5],
    ["Plate 3/16", "A36", "3/16", 120, 48, null, 284, 2, 0.5],
    ["Plate 1/4 strong", "A572-50", "1/4", 96, 48, null, 331, 6, 0.25],
    ["Sheet 10 ga", "A1011 CS", "10 ga", 120, 48, null, 205, 1, 0.5],
    ["Sheet 10 ga long", "A1011 CS", "10 ga", 144, 48, 2, 247, 4, 0.25],
    ["Sheet 11 ga", "A1011 CS", "11 ga", 120, 48, null, 183, 1, 0.5],
    ["Sheet 12 ga", "A1011 CS", "12 ga", 120, 48, null, 161, 1, 0.5],
    ["Sheet 3 mm", "A1011 CS", "3 mm", 120, 60, null, 229, 4, 0.25],
    ["Sheet 16 ga", "A1008 CS", "16 ga", 96, 48, null, 82, 1, 0.5],
    ["Sheet 18 ga", "A1008 CS", "18 ga", 96, 48, null, 66, 1, 0.5],
    ["Galv 16 ga", "A653 CS", "16 ga", 120, 48, null, 118, 1, 0.5],
    ["Galv 18 ga", "A653 CS", "18 ga", 120, 48, null, 97, 1, 0.5],
    ["Stainless 14 ga", "304", "14 ga", 120, 48, null, 308, 3, 0.5],
    ["Stainless 16 ga", "304", "16 ga", 120, 48, null, 249, 3, 0.5],
    ["Stainless 1/8", "304", "1/8", 120, 48, null, 496, 3, 0.5],
    ["Stainless 1/4", "304", "1/4", 96, 48, null, 791, 5, 0.25],
    ["Aluminum 1/16", "5052-H32", 0.063, 96, 48, null, 88, 2, 0.5],
    ["Aluminum 3/32", "5052-H32", 0.09, 120, 48, null, 157, 2, 0.5],
    ["Aluminum 1/8", "5052-H32", "1/8", 120, 48, null, 214, 2, 0.5],
    ["Aluminum 4.5 mm", "5052-H32", "4,5 mm", 96, 48, null, 247, 7, 0.25],
    ["Aluminum 1/8 hard", "6061-T6", "1/8", 96, 48, null, 203, 3, 0.25],
    ["Panel 4 mm", "Composite panel", 0.157, 96, 48, null, 148, 5, 0.25],
    ["Expanded 3/4-9", "Expanded steel 3/4-9", 0.134, 96, 48, null, 112, 3, 0.25],
  ],
};

export const STATIONS: ShopTable = {
  name: "Stations",
  title: "Stations (basis: what the time and the price each count; queue: hours already waiting there)",
  headers: [
    "Station",
    "Basis",
    "Set-up (min)",
    "Time each (min)",
    "Rate",
    "Queue (h)",
    "Vendor days",
    "Price each",
    "Minimum",
    "Coat (in)",
  ],
  rows: [
    ["Shear", "machine", 4, null, 78, 2, null, null, null, null],
    ["Waterjet", "machine", 7, null, 105, 5, 4, 3.5, 60, null],
    ["Brake", "machine", 25, null, 95, 6, null, null, null, null],
    ["Drill", "hole", 3, 0.35, 54, 1, null, null, null, null],
    ["Tap", "count", 4, 0.45, 54, 0, null, null, null, null],
    ["Deburr", "ft", 0, 0.16, 75, 0, null, null, null, null],
    ["Weld", "count", 6, 2.5, 68, 3, null, null, null, null],
    ["Coating", "ft2", null, null, 0, null, 5, 1.35, 85, 0.003],
    ["Pack", "piece", 2, 0.3, 40, 0, null, null, null, null],
  ],
};

export const RATES: ShopTable = {
  name: "Rates",
  title: "Rates and allowances (shares from 0 to 1)",
  headers: ["Rate", "Value", "Unit"],
  rows: [
    ["Material yield", 0.75, null],
    ["Scrap allowance", 0.02, null],
    ["First-piece blanks", 1, null],
    ["First job factor", 1.4, null],
    ["Allowance", 1.2, null],
    ["Brake line set-up", 4.5, "min"],
    ["Set-up per further bend", 3, "min"],
    ["Set-up by bend length", 0.6, "min/ft"],
    ["Handling per piece", 5, "s"],
    ["Handling by weight", 0.3, "s/lb"],
    ["Handling by length", 2.7, "s/ft"],
    ["Handling at next bends", 0.7, null],
    ["Shear handling per cut", 1.7, "s"],
    ["Shear handling by length", 1.8, "s/ft"],
    ["Sheet loading", 2, "min"],
    ["Blade gap setting", 8, "min"],
    ["One-person limit", 45, "lb"],
    ["Hoist above", 95, "lb"],
    ["Hoist time", 80, "s"],
    ["Second person", 36, null],
    ["Pile limit", 600, "lb"],
    ["Material mark-up", 0.1, null],
    ["Outside mark-up", 0.1, null],
    ["Overhead", 0.22, null],
    ["Margin", 0.28, null],
    ["Mark-up", 0.4, null],
    ["Line minimum", 35, null],
    ["Minimum charge", 250, null],
    ["Engineering per new part", 0, null],
    ["First article", 0, null],
    ["Certificate", 12, null],
    ["Crate", 0, null],
    ["Truck", 0, null],
    ["Tax", 0, null],
    ["Charge whole sheets", 0, null],
    ["Rush", 0.2, null],
    ["Overtime per day", 2, "h"],
    ["Second shift", 8, "h"],
    ["Sheared edge", 0.03125, "in"],
    ["Waterjet edge", 0.01, "in"],
    ["Deduction spread", 0.012, "in"],
    ["Angle spread", 0.75, "deg"],
    ["Cut plan", "money", null],
    ["Cut effort", 1, null],
    ["Gauge setting", 15, "s"],
    ["Shear stroke", 7, "s"],
    ["Shear turn", 5, "s"],
    ["Scribe line", 40, "s"],
    ["Waterjet web", 0.25, "in"],
  ],
};

const WEEK = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"] as const;
export const CALENDAR: ShopTable = {
  name: "Calendar",
  title: "Shifts (a day by name or by date; a date without times is a holiday; rows of a station count for it alone)",
  headers: ["Day", "Start", "End", "Station"],
  rows: [
    ...WEEK.map((day): CellValue[] => [day, "7:00", "15:30", null]),
    ...WEEK.map((day): CellValue[] => [day, "7:00", "15:30", "Brake"]),
    ["Saturday", "8:00", "12:00", "Brake"],
    ["2026-05-25", null, null, null],
    ["2026-05-25", null, null, "Brake"],
  ],
};

/** One row adds a material, or what the shop has timed of a built-in one. The edition holds the built-in ones as they are when a later release has others. */
export const MATERIALS: ShopTable = {
  name: "Materials",
  title: "Materials of our own (over the edition named in the first row; figures from the mill's paper)",
  headers: [
    "Name",
    "Materials edition",
    "Gauge series",
    "Density (lb/in3)",
    "Yield minimum (ksi)",
    "Tensile minimum (ksi)",
    "Tensile typical (ksi)",
    "Tensile high (ksi)",
    "Shear strength (ksi)",
    "Air radius low",
    "Air radius high",
    "Least radius",
    "Machinability",
    "Timed feed (in/min)",
    "Timed thickness (in)",
    "Source",
  ],
  rows: [
    [null, CURRENT_EDITION.name, null, null, null, null, null, null, null, null, null, null, null, null, null, null],
    [
      ...["3003-H14", null, "aluminum", 0.0986, 17, 20, 22, 26, 14, 0.12, 0.15, 0, 213],
      ...[null, null, "handbook figures, from memory: type the paper's own"],
    ],
    [
      ...["Composite panel", null, null, null, null, null, null, null, null, null, null, null, null],
      ...[90, 0.157, "invented timing: time a cut of your own"],
    ],
    [
      ...["Expanded steel 3/4-9", null, null, null, null, null, null, null, null, null, null, null, null],
      ...[25, 0.134, "invented timing: time a cut of your own"],
    ],
  ],
};

export const SHOP_TABLES: readonly ShopTable[] = [
  BRAKES,
  DIES,
  PUNCHES,
  SHEARS,
  WATERJETS,
  STATIONS,
  RATES,
  CALENDAR,
  STOCK,
  MATERIALS,
];
