/** Tells a table of the shop by its header row, whatever argument or sheet it stands in. */
import { TABLES, type TableName } from "../../bill/nouns/shop.ts";
import type { CellValue } from "../../units/cell.ts";
import { entryOf } from "../../units/certain.ts";
import { PROPERTY_HEADERS } from "../parameters/read-data.ts";

/** Any one of the words of each entry must stand in the header, and none of `lacks`; units in brackets do not count. */
interface HeaderWords {
  readonly has: readonly (readonly string[])[];
  readonly lacks?: readonly string[];
}

export const HEADER_WORDS: Readonly<Record<TableName | "bill", HeaderWords>> = {
  bill: {
    has: [["Part", "Line", "Mark", "Item", "Blank"], ["Material"], ["Thickness"], ["Flanges"], ["Quantity", "Qty"]],
    lacks: ["Stock", "Sheets"],
  },
  brakes: { has: [["Brake", "Name"], ["Rated force"], ["Bed length"]] },
  dies: { has: [["Die", "Name"], ["Opening"], ["Angle"]], lacks: ["Stroke", "Flanges"] },
  punches: { has: [["Punch", "Name"], ["Nose radius"], ["Angle"]], lacks: ["Opening", "Flanges"] },
  shears: { has: [["Shear", "Name"], ["Rated thickness"], ["Cut length", "Longest cut"]] },
  waterjets: { has: [["Waterjet", "Name"], ["Pressure"], ["Orifice"]] },
  stations: { has: [["Station", "Name"], ["Basis"], ["Rate", "Hourly rate", "Rate per hour"]] },
  rates: { has: [["Rate", "Item", "Name"], ["Value"], ["Unit"]], lacks: ["Part", "Station", "Basis"] },
  stock: {
    has: [
      ["Material"],
      ["Thickness"],
      ["Length"],
      ["Width"],
      ["Stock", "Sheet", "Price", "Price each", "Price per lb", "Price per kg"],
    ],
    lacks: ["Pattern", "Part", "Blanks", "Bundle weight"],
  },
  calendar: { has: [["Day", "Date"], ["Start"], ["End"]] },
  job: {
    has: [
      ["Job", "Job item"],
      ["Entry", "Value"],
    ],
  },
  outlines: { has: [["Tool"], ["X"], ["Y"]] },
  press: { has: [["Opening"], ["Open height"], ["Stroke"], ["Clearance"]] },
  corrections: { has: [["Material"], ["Contact"], ["K offset"]] },
  finished: { has: [["Station"], ["Estimated"], ["Recorded"]] },
};

/** Materials of the workbook's own are told by any property. */
export const isMaterials = (titles: ReadonlySet<string>): boolean =>
  ["Name", "Material"].some((word) => titles.has(foldHeader(word))) &&
  PROPERTY_HEADERS.some((word) => titles.has(foldHeader(word)));

const WITHOUT_UNIT = /\s*[([][^)\]]*[)\]]\s*$/;

/** A word as headers are compared: without unit, case, blanks and dots. */
export function foldHeader(cell: CellValue): string {
  if (typeof cell !== "string") return "";
  const known = folded.get(cell);
  if (known !== undefined) return known;
  const word = cell
    .slice(0, LONGEST_HEADER)
    .replace(WITHOUT_UNIT, "")
    .toLowerCase()
    .replace(/[\s\-_.:*]+/g, "");
  if (folded.size >= MOST_FOLDED) folded.clear();
  folded.set(cell, word);
  return word;
}

/** The same sheets are looked through after every edit. */
const folded = new Map<string, string>();
const MOST_FOLDED = 10_000; // chosen: about a megabyte
const LONGEST_HEADER = 200;

const WORDS = new Map(
  Object.entries(HEADER_WORDS).map(([name, { has, lacks = [] }]) => [
    name,
    { has: has.map((any) => any.map(foldHeader)), lacks: lacks.map(foldHeader) },
  ]),
);

export function fitsHeader(name: TableName | "bill", titles: ReadonlySet<string>): boolean {
  const { has, lacks } = entryOf(WORDS, name);
  return has.every((any) => any.some((word) => titles.has(word))) && !lacks.some((word) => titles.has(word));
}

/** Which table a header row is of; undefined where it is none of them. */
export function tableOf(header: readonly CellValue[]): TableName | undefined {
  const titles = new Set(header.map(foldHeader));
  return TABLES.find((name) => fitsHeader(name, titles));
}
