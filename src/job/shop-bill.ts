/** The bill and the shop out of a workbook: each table found by its header, each missing or wrong one said in a sentence. */

import type { MaterialTable } from "../bill/material-table.ts";
import type { Press } from "../calc/bend/order/press.ts";
import type { CheckShop } from "../cells/bill/check.ts";
import { currentMaterials, PROPERTY_HEADERS, readData } from "../cells/parameters/read-data.ts";
import type { ReadContext, TableParameter } from "../cells/record/record.ts";
import { type BillRow, bill } from "../cells/tables/bill.ts";
import { outlines, pressSettings } from "../cells/tables/press-tables.ts";
import { noRates, rates } from "../cells/tables/rates.ts";
import { anyShears, brakes, dies, punches } from "../cells/tables/shop-tables.ts";
import { anyWaterjets } from "../cells/tables/waterjet.ts";
import { type CellMatrix, isBlank } from "../units/cell.ts";
import { Refusal } from "../units/refusal.ts";
import type { UnitSystem } from "../units/system.ts";
import type { Book } from "./book.ts";
import { type FoundTable, findTable, type TableWords } from "./find-table.ts";

export const TABLES = {
  bill: { has: [["Part", "Line", "Mark", "Item"], ["Material"], ["Thickness"], ["Flanges"], ["Quantity", "Qty"]] },
  brakes: { has: [["Brake"], ["Rated force"]] },
  dies: { has: [["Die"], ["Opening"], ["Angle"]] },
  punches: { has: [["Punch"], ["Angle"]] },
  shears: { has: [["Shear"], ["Rated thickness"]] },
  waterjets: { has: [["Waterjet"], ["Pressure"]] },
  rates: { has: [["Rate"], ["Value"]] },
  outlines: { has: [["Tool"], ["X"], ["Y"]] },
  press: { has: [["Opening"], ["Die angle"], ["Finger from"]] },
  stock: { has: [["Material"], ["Thickness"], ["Length"], ["Width"]], lacks: ["Part", "Blank", "Pattern", "Quantity"] },
  materials: { has: [["Name", "Material"], PROPERTY_HEADERS], lacks: ["Part", "Blank", "Thickness", "Quantity"] },
} as const satisfies Record<string, TableWords>;

/** The built-in materials with the workbook's own laid over them, if it has any. Throws a Refusal on a wrong cell. */
export function materialsOf(book: Book, system: UnitSystem): MaterialTable {
  const own = findTable(book, TABLES.materials);
  return own ? readData(own.matrix, "materials", system) : currentMaterials();
}

export interface ShopBill {
  readonly table: FoundTable;
  readonly rows: readonly BillRow[];
  /** Undefined where brakes, dies or punches cannot be read: `missing` says why. */
  readonly shop: CheckShop | undefined;
  readonly missing: readonly string[];
  /** The real outlines of one set of tools, where the workbook draws them. */
  readonly press: Press | undefined;
  readonly system: UnitSystem;
}

/** Undefined for a workbook without a bill. */
export function readShopBill(book: Book): ShopBill | undefined {
  const table = findTable(book, TABLES.bill);
  if (!table) return undefined;
  const missing: string[] = [];
  const found = (name: keyof typeof TABLES): CellMatrix => findTable(book, TABLES[name])?.matrix ?? [[null]];
  const system = systemOf(found("dies"));
  const said = <T>(ask: () => T): T | undefined => {
    try {
      return ask();
    } catch (problem) {
      if (!(problem instanceof Refusal)) throw problem;
      missing.push(problem.message);
      return undefined;
    }
  };
  const materials = said(() => materialsOf(book, system)) ?? currentMaterials();
  const context: ReadContext = { system, materials, material: undefined };
  const read = <T>(parameter: TableParameter<T>, name: keyof typeof TABLES): T | undefined =>
    said(() => parameter.read(found(name), name, context));
  const rows = read(bill(), "bill") ?? [];
  const machines = {
    brakes: read(brakes(), "brakes"),
    dies: read(dies(), "dies"),
    punches: read(punches(), "punches"),
  };
  const shears = read(anyShears(), "shears") ?? [];
  const waterjets = isBlank(found("waterjets")[0]![0]) ? [] : (read(anyWaterjets(), "waterjets") ?? []);
  const shopRates = isBlank(found("rates")[0]![0]) ? undefined : read(rates(), "rates");
  const { brakes: b, dies: d, punches: p } = machines;
  const shop: CheckShop | undefined =
    b && d && p
      ? {
          bill: rows,
          brakes: b,
          dies: d,
          punches: p,
          shears,
          waterjets,
          rates: shopRates ?? noRates,
          materials,
          system,
        }
      : undefined;
  const drawn = isBlank(found("outlines")[0]![0]) ? undefined : read(outlines(), "outlines");
  const travels = drawn && read(pressSettings(), "press");
  const press = drawn && travels ? { ...drawn, ...travels } : undefined;
  return { table, rows, shop, missing, press, system };
}

/** Plain numbers mean what the shop's own die table means; inches where it says nothing, as in the functions. */
const systemOf = ([header = []]: CellMatrix): UnitSystem =>
  header.some((cell) => typeof cell === "string" && /^opening\s*[([]\s*(?:mm|cm|m)\b/i.test(cell.trim())) ? "mm" : "in";
