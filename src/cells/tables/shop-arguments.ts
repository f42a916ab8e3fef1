/**
 * The arguments of every function about a whole bill: the bill, then the tables of the shop and the job in one order. Each
 * table is told by its header, so that the order is only a habit, fewer may be given, and a later table moves no argument.
 */

import type { BillRow } from "../../bill/nouns/line.ts";
import type { MaterialTable } from "../../bill/nouns/material-table.ts";
import { emptyShop, type Shop, TABLES, type TableName } from "../../bill/nouns/shop.ts";
import { type BillPlan, planBill, planBillAnew } from "../../bill/plan.ts";
import { RATED_MATERIAL } from "../../data/shear-rules.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../units/cell.ts";
import { firstOf, widthOf } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { data } from "../parameters/material.ts";
import { currentMaterials, readData } from "../parameters/read-data.ts";
import { isEmptyRange } from "../parameters/shop-table.ts";
import { units } from "../parameters/units.ts";
import type { Call, ReadContext, TableParameter } from "../record/record.ts";
import { readBill } from "./bill.ts";
import { calendar } from "./calendar.ts";
import { corrections } from "./corrections.ts";
import { finished } from "./finished.ts";
import { readJob } from "./job.ts";
import { onSheet } from "./on-sheet.ts";
import { drawnPress, outlines, pressSettings } from "./press-tables.ts";
import { rates } from "./rates.ts";
import { foldHeader, HEADER_WORDS, isMaterials, tableOf } from "./recognized.ts";
import { brakes, dies, punches, shears } from "./shop-tables.ts";
import { stations } from "./stations.ts";
import { stock } from "./stock.ts";
import { anyWaterjets } from "./waterjet.ts";

/** A range as it was given: what it is is known when all of them are there. */
const range = (type: string, description: string, optional: boolean): TableParameter<CellMatrix> => ({
  shape: "table",
  type,
  description,
  optional,
  default: null,
  read: (given) => given,
});

/** Tables with an argument of their own name; those of a later release come in at any place. */
const NAMED = TABLES.filter((name) => name !== "finished");
type Named = Exclude<TableName, "finished">;

const DESCRIPTIONS: Readonly<Record<Named, string>> = {
  brakes: "Press brakes",
  dies: "V dies",
  punches: "Punches",
  shears: "Guillotine shears",
  waterjets: "Waterjets",
  stations: "Stations with their rates",
  rates: "Rates and allowances: Rate, Value, Unit",
  stock: "Sheets in stock or on offer",
  calendar: "Shifts and holidays",
  job: "The job: Job, Entry",
  outlines: "Outlines of drawn tools",
  press: "Travels of the press that is drawn",
  corrections: "What the shop's own test strips found, as STRIP.TABLE answers it",
};

/** Places for tables that a later release adds. */
const SPARE = ["more1", "more2", "more3"] as const;

export const billArguments = () => ({
  bill: range(
    "bill",
    "The bill, one part a row under a header (Part, Material, Thickness, Quantity, Width, Flanges ...)",
    false,
  ),
  ...(Object.fromEntries(
    NAMED.map((name) => [
      name,
      range(`${name} table`, `${DESCRIPTIONS[name]}; every table is told by its header`, true),
    ]),
  ) as Record<Named, TableParameter<CellMatrix>>),
  ...(Object.fromEntries(
    SPARE.map((name) => [name, range("table", "Any other table: finished jobs, materials", true)]),
  ) as Record<(typeof SPARE)[number], TableParameter<CellMatrix>>),
  units: units(),
  data: data(),
});
type Given = Readonly<Record<"bill" | Named | (typeof SPARE)[number], CellMatrix>>;

/** The plan of the bill and the tables that a call gives; with its working recorded it is made anew. */
export function planOf(given: Given, call: Call): BillPlan {
  const { materials: own, ...tables } = recognized(given);
  const { system, work } = call;
  const context: ReadContext = { system, materials: materialsOf(own, call), material: undefined };
  const rows = readBill(given.bill, "bill", context);
  const shop = readShop(tables, context);
  return work ? planBillAnew(shop, rows, work) : planBill(shop, rows);
}

/** Materials of the workbook come in among the tables; an edition is then named in them, not beside them. */
function materialsOf(own: CellMatrix | undefined, { materials, system }: Call): MaterialTable {
  if (own === undefined) return materials;
  if (materials !== currentMaterials())
    throw wrong("data", "left out where a table of materials is given", materials.edition.name);
  return readData(own, "materials", system);
}

/** Every range under the name of the table that its header tells. */
function recognized(given: Given): Partial<Record<TableName | "materials", CellMatrix>> {
  const found: Partial<Record<TableName | "materials", CellMatrix>> = {};
  for (const argument of [...NAMED, ...SPARE]) {
    const matrix = given[argument];
    if (isEmptyRange(matrix)) continue;
    const headers = firstOf(matrix);
    const name = tableOf(headers) ?? (isMaterials(new Set(headers.map(foldHeader))) ? "materials" : undefined);
    if (!name) throw wrong(argument, RULE, headers.slice(0, 6).map(asWord).join(", "), hintFor(argument, matrix));
    if (found[name])
      throw wrong(argument, `another table than ${name}, which is given already`, `a second ${name} table`);
    found[name] = matrix;
  }
  return found;
}

const asWord = (cell: CellValue): string => (isCellError(cell) ? cell.code : String(cell ?? ""));
const RULE = "a table of the shop, told by its header row";

/** What stood in this place in earlier releases, or which headers would tell the table. */
function hintFor(argument: string, matrix: CellMatrix): string {
  const [first] = firstOf(matrix);
  if (matrix.length === 1 && widthOf(matrix) === 1)
    return typeof first === "number"
      ? "start, due and other entries stand in the job's table (Job, Entry)"
      : "units is an argument of its own; pace, basis and other words stand in the job's table";
  const titles = firstOf(matrix).map(String);
  if (titles.includes("Route") || titles.includes("Pattern"))
    return "the plan is worked out from the tables: leave out what BILL.ROUTE and CUT.PLAN answer";
  const words = HEADER_WORDS[argument as TableName];
  return words ? `a ${argument} table has ${words.has.map(([word]) => `"${word}"`).join(", ")}` : "";
}

/** The shop out of the tables that are there. Throws the Refusal of the first wrong cell. */
export function readShop(
  tables: Partial<Record<TableName, CellMatrix>>,
  context: ReadContext,
  headerRows: Partial<Record<TableName, number>> = {},
): Shop {
  const read = <T>(name: TableName, parameter: Pick<TableParameter<T>, "read">): T | undefined => {
    const matrix = tables[name];
    const headerRow = headerRows[name];
    const at = headerRow === undefined ? context : { ...context, headerRow };
    return matrix && onSheet(name, headerRow, () => parameter.read(matrix, name, at));
  };
  const none = emptyShop(context.materials.find(RATED_MATERIAL, "rated material"), context.system);
  return {
    ...none,
    brakes: read("brakes", brakes()) ?? none.brakes,
    dies: read("dies", dies()) ?? none.dies,
    punches: read("punches", punches()) ?? none.punches,
    drawn: drawnPress(read("outlines", outlines()), read("press", pressSettings())),
    shears: read("shears", shears()) ?? none.shears,
    waterjets: read("waterjets", anyWaterjets()) ?? none.waterjets,
    stations: read("stations", stations()) ?? none.stations,
    rates: read("rates", rates()) ?? none.rates,
    stock: read("stock", stock()) ?? none.stock,
    calendar: read("calendar", calendar()) ?? none.calendar,
    job: read("job", { read: readJob }) ?? none.job,
    corrections: read("corrections", corrections()) ?? none.corrections,
    finished: read("finished", finished()) ?? none.finished,
    given: TABLES.filter((name) => tables[name] !== undefined),
  };
}

export type { BillRow };
