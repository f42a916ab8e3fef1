/** The plan of the bill that a workbook holds: each table found by its header, each missing or wrong one said in a sentence. */

import type { BillRow } from "../bill/nouns/line.ts";
import type { MaterialTable } from "../bill/nouns/material-table.ts";
import { NO_JOB, type Shop, TABLES, type TableName } from "../bill/nouns/shop.ts";
import { type BillPlan, planBill } from "../bill/plan.ts";
import { currentMaterials, readData } from "../cells/parameters/read-data.ts";
import type { ReadContext } from "../cells/record/record.ts";
import { readBill } from "../cells/tables/bill.ts";
import { onSheet } from "../cells/tables/on-sheet.ts";
import { foldHeader, HEADER_WORDS, isMaterials } from "../cells/tables/recognized.ts";
import { readShop } from "../cells/tables/shop-arguments.ts";
import type { CellMatrix } from "../units/cell.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import type { UnitSystem } from "../units/system.ts";
import type { Book } from "./book.ts";
import { type FoundTable, findTable, findTableWhere } from "./find-table.ts";

export interface JobPlan {
  readonly plan: BillPlan;
  /** Where the bill stands. */
  readonly table: FoundTable;
  /** Tables that are missing or cannot be read, a sentence each. */
  readonly missing: readonly string[];
  readonly system: UnitSystem;
  /** Of the materials it was planned with. */
  readonly edition: string;
}

/** The shop of a workbook, without a bill. */
export interface BookShop {
  readonly shop: Shop;
  readonly context: ReadContext;
  readonly missing: readonly string[];
}

/** Without these a bill cannot be bent. */
const NEEDED: readonly TableName[] = ["brakes", "dies", "punches"];

export function shopOf(book: Book): BookShop {
  const found = new Map(TABLES.map((name) => [name, findTable(book, name)]));
  const system = systemOf(found.get("dies")?.matrix ?? [[]]);
  const missing: string[] = NEEDED.filter((name) => !found.get(name)).map(
    (name) => `${name} must be a table whose header has ${headerSays(name)}; got none`,
  );
  const materials = refusalOr(() => materialsOf(book, system));
  if (materials instanceof Refusal) missing.push(materials.message);
  const context: ReadContext = {
    system,
    materials: materials instanceof Refusal ? currentMaterials() : materials,
    material: undefined,
  };
  // A table that cannot be read is left out and named; the others still serve.
  const tables: Partial<Record<TableName, CellMatrix>> = {};
  const rows: Partial<Record<TableName, number>> = {};
  for (const name of TABLES) {
    const table = found.get(name);
    if (!table || table.matrix.length < 2) continue;
    const place = { [name]: table.top + 1 };
    const pair = name === "outlines" || name === "press"; // one without the other is refused together
    const read = pair ? undefined : refusalOr(() => readShop({ [name]: table.matrix }, context, place));
    if (read instanceof Refusal) missing.push(read.message);
    else {
      tables[name] = table.matrix;
      rows[name] = table.top + 1;
    }
  }
  const shop = refusalOr(() => readShop(tables, context, rows));
  if (!(shop instanceof Refusal)) return { shop, context, missing };
  const { outlines: _, press: __, ...others } = tables;
  return { shop: readShop(others, context, rows), context, missing: [...missing, shop.message] };
}

/** Undefined where the workbook holds no bill. */
export function jobPlan(book: Book): JobPlan | undefined {
  const table = findTable(book, "bill");
  if (!table) return undefined;
  const { shop, context, missing } = shopOf(book);
  const rows = refusalOr(() => readBill(table.matrix, "bill", { ...context, headerRow: table.top + 1 }));
  const lines: readonly BillRow[] = rows instanceof Refusal ? [] : rows;
  return {
    plan: planBill(shop, lines),
    table,
    missing: rows instanceof Refusal ? [...missing, rows.message] : missing,
    system: context.system,
    edition: context.materials.edition.name,
  };
}

/** A bill that stands in no workbook, such as a part list, in the shop of one: name, customer and dates of its job are not these. */
export const planIn = ({ shop }: BookShop, lines: readonly BillRow[], name = ""): BillPlan =>
  planBill(
    {
      ...shop,
      job: { ...NO_JOB, name, profit: shop.job.profit, currency: shop.job.currency },
      given: shop.given.filter((table) => table !== "job"),
    },
    lines,
  );

function materialsOf(book: Book, system: UnitSystem): MaterialTable {
  const found = findTableWhere(book, isMaterials);
  if (!found) return currentMaterials();
  return onSheet("materials", found.top + 1, () => readData(found.matrix, "materials", system));
}

export const headerSays = (name: TableName | "bill"): string =>
  HEADER_WORDS[name].has.map(([word]) => `"${word}"`).join(" and ");

/** Plain numbers mean what the shop's own die table means; inches where it says nothing, as in the functions. */
const systemOf = ([header = []]: CellMatrix): UnitSystem =>
  header.some((cell) => typeof cell === "string" && foldHeader(cell) === "opening" && /\(\s*(?:mm|cm|m)\b/i.test(cell))
    ? "mm"
    : "in";
