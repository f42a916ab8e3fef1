/** `shop check PARTS.csv --shop WORKBOOK.xlsx [--json]`: every part of a bill against the shop's own tables. */
import { readFileSync } from "node:fs";
import type { MaterialTable } from "../../bill/nouns/material-table.ts";
import type { Problem } from "../../calc/problem.ts";
import { type CheckShop, checkLine } from "../../cells/bill/check.ts";
import { type Outcome, outcomes } from "../../cells/bill/rows.ts";
import type { ReadContext, TableParameter } from "../../cells/record/record.ts";
import { readBill } from "../../cells/tables/bill.ts";
import { rates } from "../../cells/tables/rates.ts";
import { anyShears, brakes, dies, punches } from "../../cells/tables/shop-tables.ts";
import { anyWaterjets } from "../../cells/tables/waterjet.ts";
import { findTable, type TableWords } from "../../job/find-table.ts";
import { materialsOf, TABLES } from "../../job/shop-bill.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { Refusal } from "../../units/refusal.ts";
import { callerPath } from "./caller.ts";
import { inWords, partOf, SYSTEM, type Verdict } from "./checked-part.ts";
import type { Command } from "./command.ts";
import { partsOf } from "./parts-file.ts";
import { readArguments, UsageError } from "./usage.ts";

const REFUSED = 2;

export const check: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" }, shop: { type: "string" } });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1 || values.shop === undefined)
    throw new UsageError("check takes PARTS.csv --shop WORKBOOK.xlsx");
  let found: Outcome<readonly Problem[]>[];
  try {
    const tables = shopIn(values.shop);
    const bill = readBill(partsOf(read(file)), "parts", contextOf(tables.materials));
    const shop = { ...tables, bill };
    found = outcomes(bill, (line) => checkLine(line, shop).problems);
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    context.note(`${problem.message}\n`);
    return REFUSED;
  }
  const counts: Record<Verdict, number> = { clear: 0, check: 0, stop: 0, unreadable: 0 };
  for (const outcome of found) {
    const part = partOf(outcome);
    counts[part.verdict]++;
    context.out(values.json ? `${JSON.stringify(part)}\n` : inWords(part));
  }
  const summary = { parts: found.length, ...counts };
  context.out(
    values.json
      ? `${JSON.stringify({ summary })}\n`
      : `${Object.entries(summary)
          .map(([name, count]) => `${count} ${name}`)
          .join(", ")}\n`,
  );
  return counts.stop + counts.unreadable > 0 ? 1 : 0;
};

const contextOf = (materials: MaterialTable): ReadContext => ({ system: SYSTEM, materials, material: undefined });

function read(file: string): Uint8Array {
  try {
    return readFileSync(callerPath(file));
  } catch (error) {
    throw new FileRefusal(
      "unreadable",
      `${file} must be a file that can be read; got ${(error as NodeJS.ErrnoException).code}`,
    );
  }
}

function shopIn(file: string): Omit<CheckShop, "bill"> {
  const book = bookOf(readWorkbook(read(file)));
  const materials = materialsOf(book, SYSTEM);
  const table = <T>(name: keyof typeof TABLES, parameter: TableParameter<T>, needed: boolean): T => {
    const range = findTable(book, TABLES[name])?.matrix;
    if (!range && needed)
      throw new FileRefusal(
        "unreadable",
        `${file} must be a workbook with a ${parameter.type} whose header has ${inHeader(TABLES[name].has)}; got none`,
      );
    return parameter.read((range ?? [[null]]) as never, parameter.type, contextOf(materials));
  };
  return {
    brakes: table("brakes", brakes(), true),
    dies: table("dies", dies(), true),
    punches: table("punches", punches(), true),
    shears: table("shears", anyShears(), false),
    waterjets: table("waterjets", anyWaterjets(), false),
    rates: table("rates", rates(true), false),
    materials,
    system: SYSTEM,
  };
}

const inHeader = (has: TableWords["has"]): string => has.map(([word]) => `"${word}"`).join(" and ");
