/** The invented shop and bills of it as ranges of a workbook, and how the functions are asked about them. */

import type { TableName } from "../../../src/bill/nouns/shop.ts";
import { RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import * as shop from "../../../src/cells/example/invented-shop.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";

export type Row = readonly CellValue[];
/** Rows that say less than the header are filled up with empty cells. */
export const range = (header: Row, ...rows: Row[]): CellMatrix =>
  [header, ...rows].map((row) => header.map((_, i) => row[i] ?? null));

const table = ({ headers, rows }: shop.ShopTable): CellMatrix => range(headers, ...rows);

export type Tables = Partial<Record<TableName, CellMatrix>>;
/** Monday 2 March 2026, midnight, as a worksheet counts. */
export const MONDAY = 46083;
export const HOUR = 1 / 24;
/** Work can begin on Monday at 7:00 and must leave four days later. */
export const job = (entries: Readonly<Record<string, CellValue>> = {}): CellMatrix => {
  const all = { Start: MONDAY + 7 * HOUR, Due: MONDAY + 4 + 12 * HOUR, ...entries };
  return range(["Job", "Entry"], ...Object.entries(all));
};

/** Every table of the invented shop, and a job. */
export const SHOP = {
  brakes: table(shop.BRAKES),
  dies: table(shop.DIES),
  punches: table(shop.PUNCHES),
  shears: table(shop.SHEARS),
  waterjets: table(shop.WATERJETS),
  stations: table(shop.STATIONS),
  rates: table(shop.RATES),
  // Without the goods that are cut only: the edition by which hand figures go does not know them.
  stock: table(shop.STOCK).filter(([name]) => !/^(Panel|Expanded)/.test(String(name))),
  calendar: table(shop.CALENDAR),
  job: job(),
} as const satisfies Tables;

/** What the samples have beside. */
export const WHOLE_STOCK = table(shop.STOCK);
export const MATERIALS = table(shop.MATERIALS);

/** Only the rows that begin with these words. */
export const only = ([header, ...rows]: CellMatrix, ...names: readonly CellValue[]): CellMatrix => [
  header!,
  ...names.map((name) => rows.find(([first]) => first === name)!),
];
/** Without the rows that begin with these words. */
export const without = (of: CellMatrix, ...names: readonly CellValue[]): CellMatrix =>
  of.filter(([first], i) => i === 0 || !names.includes(first!));
/** One cell changed: of the row that begins with this word, in the column of this header. */
export function withCell(of: CellMatrix, name: CellValue, header: string, value: CellValue): CellMatrix {
  const column = of[0]!.findIndex((cell) => bare(cell) === header);
  if (column < 0 || !of.some(([first]) => first === name)) throw new Error(`no ${name}, ${header}`);
  return of.map((row, i) => (i > 0 && row[0] === name ? row.with(column, value) : row));
}
export const rates = (changed: Readonly<Record<string, CellValue>>): CellMatrix => {
  const known = SHOP.rates.map((row) => (String(row[0]) in changed ? row.with(1, changed[String(row[0])]!) : row));
  const added = Object.entries(changed).filter(([name]) => !known.some(([first]) => first === name));
  return [...known, ...added.map(([name, value]): CellValue[] => [name, value, null])];
};

const bare = (cell: CellValue | undefined): string => String(cell).replace(/ \(.*\)$/, "");

/** A line of a bill by its columns; sizes in inches. */
export type Line = Readonly<Record<string, CellValue>>;
/** The bracket of tests/reference/worked-bracket.ts. */
export const BRACKET: Line = {
  Part: "HB1",
  Material: "A36",
  Thickness: 0.25,
  Quantity: 20,
  Width: 4,
  Flanges: "2; 3",
  "Bend angles": 90,
  Holes: 2,
  "Hole diameter": 0.5,
};
export const bracket = (changed: Line = {}): Line => ({ ...BRACKET, ...changed });
/** A row of nonsense. */
export const NONSENSE: Line = { ...BRACKET, Part: "??", Material: "cheese", Thickness: -4, Quantity: "many" };

export function bill(...lines: readonly Line[]): CellMatrix {
  const header = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  return range(header, ...lines.map((line) => header.map((column) => line[column] ?? null)));
}

/** The arguments of every function about a bill, tables in the order of the shop. */
export const given = (of: CellMatrix, tables: Tables = SHOP): (CellMatrix | CellValue)[] => [
  of,
  ...Object.values(tables).filter((each) => each !== undefined),
];

/** Figures worked by hand go by the shop's rule: edition 2026.1, where the call does not name one. */
export function underRule(name: string, args: readonly (CellMatrix | CellValue)[]): (CellMatrix | CellValue)[] {
  const data = Object.keys(RECORDS.find((each) => each.name === name)?.parameters ?? {}).indexOf("data");
  if (data < 0 || args.length > data) return [...args];
  return [...args, ...Array.from({ length: data - args.length }, () => null), "2026.1"];
}

/** As a workbook asks that names no edition. */
export function askNow(name: string, ...args: (CellMatrix | CellValue)[]): CellMatrix {
  const { value } = shopFunctions.call(name, ofBoth(name, args));
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
}
/** What stands before the bill: of two bills the other one, here the same; of breaks the first line and some quantities. */
export function before(name: string, of: CellMatrix): (CellMatrix | CellValue)[] {
  const [header = [], first = []] = of;
  if (name === "BILL.BREAKS") return [first[header.indexOf("Part")] ?? null, "5; 50"];
  return name === "BILL.CHANGES" ? [of] : [];
}
const ofBoth = (name: string, args: (CellMatrix | CellValue)[]): (CellMatrix | CellValue)[] =>
  Array.isArray(args[0]) ? [...before(name, args[0] as CellMatrix), ...args] : args;

export function ask(name: string, ...args: (CellMatrix | CellValue)[]): CellMatrix {
  const { value } = shopFunctions.call(name, underRule(name, ofBoth(name, args)));
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
}
/** Of lines in a shop that may differ from the invented one. */
export const answer = (name: string, lines: readonly Line[], changed: Tables = {}): CellMatrix =>
  ask(name, ...given(bill(...lines), { ...SHOP, ...changed }));
export function refusal(name: string, ...args: (CellMatrix | CellValue)[]): string {
  const { value } = shopFunctions.call(name, underRule(name, args));
  return isCellError(value) ? (value.message ?? "") : "answered";
}

/** A column of a spill by its header, with or without the unit in brackets. */
export function columnOf(spill: CellMatrix, header: string): CellValue[] {
  const index = spill[0]!.findIndex((cell) => bare(cell) === header);
  if (index < 0) throw new Error(`no column ${header} in ${spill[0]!.join(", ")}`);
  return spill.slice(1).map((row) => row[index]!);
}
/** One cell of a spill: of the first row whose first cell is this. */
export const cellOf = (spill: CellMatrix, first: CellValue, header: string): CellValue =>
  columnOf(spill, header)[spill.slice(1).findIndex((row) => row[0] === first)]!;
