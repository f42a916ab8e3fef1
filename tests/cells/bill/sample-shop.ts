/** The invented shop and bracket of tests/reference/worked-bracket.ts as ranges of a workbook, and more of the same. */
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

export type Row = readonly CellValue[];
/** Rows that say less than the header are filled up with empty cells. */
export const range = (header: Row, ...rows: Row[]): CellMatrix =>
  [header, ...rows].map((row) => header.map((_, i) => row[i] ?? null));

export const BRAKE = range(
  [
    "Brake",
    "Rated force (US ton)",
    "Bed length (in)",
    "Between housings (in)",
    "Open stroke (in)",
    "Approach speed (in/min)",
    "Bend speed (in/min)",
    "Return speed (in/min)",
    "Gauge speed (in/min)",
  ],
  ["Brake A", 200, 120, 100, 4, 300, 24, 240, 600],
);
export const DIES = range(["Die", "Opening (in)", "Angle (deg)"], ["V2", 2, 80], ["V1", 1, 80], ["V5/8", 0.625, 80]);
export const PUNCHES = range(["Punch", "Nose radius (in)", "Angle (deg)"], ["P1", 0.0625, 78]);
export const SHEAR = range(
  ["Shear", "Rated thickness (in)", "Cut length (in)", "Strokes per minute", "Cuts per blank"],
  ["Shear A", 0.25, 120, 20, 2],
);
export const WATERJET = range(
  [
    "Waterjet",
    "Pressure (ksi)",
    "Orifice (in)",
    "Abrasive rate (lb/min)",
    "Nozzle diameter (in)",
    "Quality",
    "Highest feed (in/min)",
    "Pierce time (s)",
  ],
  ["Jet A", 50, 0.014, 0.75, 0.04, 3, 60, 8],
);
export const STOCK = range(
  ["Stock", "Material", "Thickness (in)", "Length (in)", "Width (in)", "Price", "Count", "Lead days"],
  ["48 x 96", "A36", 0.25, 96, 48, 220, 4, 0],
  ["48 x 96", "A36", 0.375, 96, 48, 330, null, 5],
  ["48 x 96", "5052-H32", 0.125, 96, 48, 150, null, 2],
  ["48 x 96", "304", "14 ga", 96, 48, 190, null, 2],
);
export const STATIONS = range(
  [
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
  ["Shear", "machine", 5, null, 60, 2, null, null, null, null],
  ["Waterjet", "machine", 8, null, 90, 1, 3, 4, null, null],
  ["Brake", "machine", 10, null, 75, 3, null, null, null, null],
  ["Drill", "hole", 3, 0.4, 55, null, null, null, null, null],
  ["Tap", "count", 4, 0.5, 55, null, null, null, null, null],
  ["Deburr", "ft", 0, 0.1, 45, null, null, null, null, null],
  ["Coating", "ft2", null, null, 0, null, 5, 1.2, 75, 0.003],
);
export const RATE_ROWS: Row[] = [
  ["Material yield", 0.8, null],
  ["Scrap allowance", 0.02, null],
  ["First-piece blanks", 1, null],
  ["First job factor", 1.5, null],
  ["Handling per piece", 4, "s"],
  ["Handling by weight", 0.5, "s/lb"],
  ["Handling by length", 1, "s/ft"],
  ["One-person limit", 40, "lb"],
  ["Hoist above", 90, "lb"],
  ["Hoist time", 90, "s"],
  ["Second person", 35, null],
  ["Overhead", 0.25, null],
  ["Margin", 0.3, null],
  ["Mark-up", 0.45, null],
  ["Minimum charge", 0, null],
  ["Rush", 0.25, null],
  ["Overtime per day", 2, "h"],
  ["Sheared edge", 0.03125, "in"],
  ["Waterjet edge", 0.01, "in"],
  ["Deduction spread", 0.01, "in"],
  ["Angle spread", 0.5, "deg"],
];
export const RATES = range(["Rate", "Value", "Unit"], ...RATE_ROWS);
export const rates = (changed: Record<string, CellValue>): CellMatrix =>
  range(
    ["Rate", "Value", "Unit"],
    ...RATE_ROWS.map(([name, value, unit]): Row => [name!, changed[name as string] ?? value!, unit!]),
  );
export const CALENDAR = range(
  ["Day", "Start", "End"],
  ...["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"].map((day): Row => [day, "7:00", "15:00"]),
);
/** Monday 2 March 2026, midnight. */
export const MONDAY = 46083;

export const BILL_HEADER = [
  "Part",
  "Material",
  "Thickness (in)",
  "Quantity",
  "Width (in)",
  "Flanges (in)",
  "Bend angles",
  "Holes",
  "Hole diameter (in)",
  "Operations",
  "Route",
  "Area",
  "Tolerance (in)",
] as const;
export const BRACKET: Row = ["HB1", "A36", 0.25, 20, 4, "2; 3", 90, 2, 0.5, null, null, "Deck", null];
export const bill = (...rows: Row[]): CellMatrix => range(BILL_HEADER, ...rows);

/** Arguments of every function about a bill, in the order of its record. */
export const ARGUMENTS = (of: CellMatrix, rateTable = RATES): Record<string, (CellMatrix | CellValue)[]> => {
  const benders = [of, BRAKE, DIES, PUNCHES];
  const cutters = [...benders, SHEAR, WATERJET];
  const workers = [...cutters, STATIONS, rateTable];
  return {
    "BILL.BLANKS": [...benders, rateTable],
    "BILL.CHECK": [...cutters, rateTable],
    "BILL.TIMES": workers,
    "BILL.ROUTE": [...workers, CALENDAR, MONDAY],
    "BILL.SETUPS": [...benders, rateTable],
    "BILL.PRICE": [...cutters, STOCK, STATIONS, rateTable],
    "BILL.MACHINES": cutters,
    "BILL.SHEETS": [...benders, STOCK, rateTable],
    "BILL.WHATIF": [...workers, CALENDAR, MONDAY, MONDAY + 4],
    "BILL.LOADIN": [...benders, rateTable],
  };
};

/** A column of a spill by its header, with or without the unit in brackets. */
export function columnOf(spill: CellMatrix, header: string): CellValue[] {
  const index = spill[0]!.findIndex((cell) => String(cell).replace(/ \(.*\)$/, "") === header);
  if (index < 0) throw new Error(`no column ${header} in ${spill[0]!.join(", ")}`);
  return spill.slice(1).map((row) => row[index]!);
}

/** Travels of brake, gauge and die, as BEND.ORDER reads them. */
export const PRESS_HEADER = [
  "Opening (in)",
  "Shoulder radius (mm)",
  "Die angle (deg)",
  "Finger from (mm)",
  "Finger to (mm)",
  "Nearest stop (mm)",
  "Furthest stop (mm)",
  "Finger draws back",
  "Open height (mm)",
  "Stroke (mm)",
  "Clearance (mm)",
  "Off the end",
];
