/** One bracket and a few rows of the invented shop as arguments of a formula, for the examples of the functions about a bill. */
import type { CellValue } from "../../units/cell.ts";
import { foundIn } from "../../units/certain.ts";
import * as shop from "./invented-shop.ts";

const cell = (value: CellValue): string =>
  value === null ? '""' : typeof value === "string" ? JSON.stringify(value) : String(value);
const row = (cells: readonly CellValue[]): string => `{${cells.map(cell).join(",")}}`;

/** The rows of a table that begin with these words, as a formula. */
function some({ headers, rows }: shop.ShopTable, ...names: readonly string[]): string {
  const found = names.map((name) => foundIn(rows, ([first]) => first === name));
  return `VSTACK(${[headers, ...found].map(row).join(",")})`;
}

export const BILL_EXAMPLE =
  'VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5})';
const WEEK = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"].map((day) => row([day, "7:00", "15:30"]));
export const EXAMPLE_CALENDAR = `VSTACK(${[row(["Day", "Start", "End"]), ...WEEK].join(",")})`;

const RATES = some(
  shop.RATES,
  "Scrap allowance",
  "First-piece blanks",
  "First job factor",
  "Handling per piece",
  "One-person limit",
  "Overhead",
  "Margin",
);
const JOB = 'VSTACK({"Job","Entry"},{"Start","2026-03-02 07:00"},{"Due","2026-03-04 12:00"})';

const BENDERS = [BILL_EXAMPLE, some(shop.BRAKES, "Brake 1"), some(shop.DIES, "V 2"), some(shop.PUNCHES, "Plain")];
const CUTTERS = [...BENDERS, some(shop.SHEARS, "Shear 1")];

/** A shop that cuts as well, with its sheets. */
export const EXAMPLE_CUTTERS = [...CUTTERS, some(shop.STOCK, "Plate 1/4")].join(",");
/** Everything a price and a date need. */
export const EXAMPLE_SHOP = [
  ...CUTTERS,
  some(shop.STATIONS, "Shear", "Brake", "Drill"),
  RATES,
  some(shop.STOCK, "Plate 1/4"),
  EXAMPLE_CALENDAR,
  JOB,
].join(",");
