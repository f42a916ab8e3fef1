/** `shop upgrade IN.xlsx OUT.xlsx`: a job's workbook of an earlier release with the tables and formulas of this one. */
import { existsSync, writeFileSync } from "node:fs";
import { calculatedBytes } from "../../job/building/calculated.ts";
import { SCHEMA, schemaOf } from "../../job/schema.ts";
import { figureChanges } from "../../job/upgrade/stored-figures.ts";
import { upgraded } from "../../job/upgrade/upgraded.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { refusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { callerPath } from "./caller.ts";
import type { Command } from "./command.ts";
import { orRefused } from "./job-files.ts";
import { bytesOf } from "./read-file.ts";
import { readArguments, UsageError } from "./usage.ts";

export const upgrade: Command = async (args, context) => {
  const { positionals } = readArguments(args, {});
  const [from, out] = positionals;
  if (from === undefined || out === undefined || positionals.length > 2 || !/\.xlsx$/i.test(out))
    throw new UsageError("upgrade takes IN.xlsx and OUT.xlsx");
  return orRefused(context, () => {
    const to = callerPath(out);
    if (existsSync(to))
      throw refusal("unwritable", out, "a file that does not exist yet", "one that does", "nothing was changed");
    const workbook = readWorkbook(bytesOf(from));
    if (workbook.sheets.every(({ formulas }) => formulas.length === 0))
      throw refusal(
        "unreadable",
        from,
        "a workbook with its formulas",
        "a copy of values",
        "upgrade the one it was made from",
      );
    const book = bookOf(workbook);
    if (schemaOf(book) === SCHEMA) {
      context.out(`${from} is up to date; nothing was written\n`);
      return 0;
    }
    const formulas = new Map(workbook.sheets.map((sheet) => [sheet.name, sheet.formulas.map(({ text }) => text)]));
    const { model, changes } = upgraded(book, (name) => formulas.get(name) ?? []);
    context.note("calculating ...\n");
    const bytes = calculatedBytes(model);
    writeFileSync(to, bytes, { flag: "wx" });
    const figures = figureChanges(book, bookOf(readWorkbook(bytes)));
    const said = figures.length === 0 ? ["hours and price are as they stood"] : figures;
    context.out(`${[...changes, ...said].join("\n")}\n${out} is written; ${from} is as it was\n`);
    return 0;
  });
};
