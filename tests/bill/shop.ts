/** The invented shop and bills of it as the nouns of src/bill: read from the tables of a workbook, as a user has them. */
import { type BillLine, type BillRow, isLine } from "../../src/bill/nouns/line.ts";
import type { Shop } from "../../src/bill/nouns/shop.ts";
import { BillPlan, isQuoted, type LineAnswer, type QuotedLine } from "../../src/bill/plan.ts";
import { readData } from "../../src/cells/parameters/read-data.ts";
import { readBill } from "../../src/cells/tables/bill.ts";
import { readShop } from "../../src/cells/tables/shop-arguments.ts";
import { bill, type Line, SHOP, type Tables } from "../cells/example/tables.ts";

export { bracket } from "../cells/example/tables.ts";

/** Figures worked by hand go by the shop's rule: edition 2026.1. */
const context = { system: "in" as const, materials: readData([["2026.1"]], "data", "in"), material: undefined };

/** Tables that are undefined were not given. */
export const shopOf = (changed: Partial<Record<keyof Tables, Tables[keyof Tables] | undefined>> = {}): Shop => {
  const tables = { ...SHOP, ...changed };
  return readShop(Object.fromEntries(Object.entries(tables).filter(([, table]) => table !== undefined)), context);
};
export const rowsOf = (...lines: readonly Line[]): BillRow[] => readBill(bill(...lines), "bill", context);
export function lineOf(line: Line): BillLine {
  const [row] = rowsOf(line);
  if (!row || !isLine(row)) throw new Error(row?.refusal.message ?? "no line");
  return row;
}

/** Past every memory. */
export const planned = (lines: readonly Line[], shop: Shop = shopOf()): BillPlan =>
  new BillPlan(shop, rowsOf(...lines));
export const quotedOf = (plan: BillPlan, part: string): QuotedLine => {
  const found = answerOf(plan, part);
  if (!isQuoted(found)) throw new Error(`${part} is not quoted: ${JSON.stringify(found.findings)}`);
  return found;
};
export const answerOf = (plan: BillPlan, part: string): LineAnswer => {
  const found = plan.lines.find((line) => line.part === part);
  if (!found) throw new Error(`no ${part}`);
  return found;
};
export const kindsOf = ({ findings }: Pick<LineAnswer, "findings">): string[] =>
  findings.map(({ about, status, kind }) => `${about}: ${status} ${kind}`);
export const inches = (value: number): number => value / 25.4;
