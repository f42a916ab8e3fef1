/** The functions about a bill as a workbook asks them, their answers read back by header. */
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../src/units/cell.ts";
import type { RandomBill } from "./random-bill.ts";

export type Row = Readonly<Record<string, CellValue>>;

const ARGUMENTS = ["brakes", "dies", "punches", "shears", "waterjets", "stations", "rates", "stock", "calendar", "job"];

/** @param order in which the tables are handed over; every table is told by its header. */
export function ask(name: string, { bill, tables }: RandomBill, order = ARGUMENTS): Row[] | string {
  const { value } = shopFunctions.call(name, [bill, ...order.map((table) => tables[table] ?? null)] as CellMatrix[]);
  if (isCellError(value)) return value.message ?? value.code;
  const [header, ...rows] = value as CellMatrix;
  const titles = header!.map((title) => String(title).replace(/ \(.*\)$/, ""));
  return rows.map((row) => Object.fromEntries(titles.map((title, i) => [title, row[i] ?? ""])));
}

export const NAMES = [
  "BILL.CHECK",
  "BILL.BLANKS",
  "BILL.ROUTE",
  "CUT.PLAN",
  "CUT.LIST",
  "BILL.SHEETS",
  "BILL.TIMES",
  "BILL.SETUPS",
  "BILL.MACHINES",
  "BILL.PRICE",
  "BILL.WHATIF",
  "BILL.STATIONS",
  "BILL.LOADIN",
  "BILL.SUMMARY",
] as const;
