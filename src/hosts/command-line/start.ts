/** `shop start OUT.xlsx [--parts PARTS.csv] [--shop WORKBOOK.xlsx]`: a job's workbook of one's own. Says what it understood. */
import { existsSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { calculatedBytes } from "../../job/building/calculated.ts";
import { shopOf } from "../../job/job-plan.ts";
import { jobWorkbook } from "../../job/job-sheets/job-workbook.ts";
import { faultWords, mapWords } from "../../job/part-list/list-words.ts";
import { bookOfTables, exampleShop, shopTablesOf } from "../../job/start/shop-tables.ts";
import { startedContents } from "../../job/start/started.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { refusal } from "../../sheet/package/file-refusal.ts";
import { callerPath } from "./caller.ts";
import type { Command } from "./command.ts";
import { bookIn, LIST_OPTIONS, listOf, listOptions, orRefused, refuseMissing } from "./job-files.ts";
import { readArguments, wrongPieces } from "./usage.ts";

const UNREAD = 1;

export const start: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, {
    parts: { type: "string" },
    shop: { type: "string" },
    ...LIST_OPTIONS,
  });
  const [out] = positionals;
  if (out === undefined || positionals.length > 1 || !/\.xlsx$/i.test(out))
    throw wrongPieces("start", "OUT.xlsx, and [--parts PARTS.csv] [--shop WORKBOOK.xlsx]", positionals);
  const { parts, shop } = values;
  const options = listOptions(values);
  return orRefused(context, () => {
    const to = callerPath(out);
    if (existsSync(to))
      throw refusal("unwritable", out, "a file that does not exist yet", "one that does", "nothing was changed");
    const tables = shop === undefined ? exampleShop() : shopTablesOf(bookIn(shop));
    const read = shopOf(bookOfTables(tables));
    refuseMissing(shop ?? out, read.missing);
    const list = parts === undefined ? undefined : listOf(parts, read, options);
    if (list) {
      context.out(
        `${parts}: ${list.lines} ${list.lines === 1 ? "line" : "lines"}, heading in row ${list.headingRow}\n`,
      );
      for (const words of [...mapWords(list, true), ...faultWords(list.faults)]) context.out(`${words}\n`);
    }
    const facts = {
      name: basename(out).replace(/\.xlsx$/i, ""),
      today: Math.floor(serialNow(new Date())),
      partsFile: parts && basename(parts),
      shopFile: shop && basename(shop),
    };
    context.note("calculating ...\n");
    writeFileSync(to, calculatedBytes(jobWorkbook(startedContents(facts, tables, read, list))), { flag: "wx" });
    context.out(`${out} is written; open it in Excel, or as a page: node shop view ${out}\n`);
    if (shop === undefined)
      context.out(
        "Its shop is an example, one machine and one sheet of each kind: type your own on the sheet Shop, or start with --shop WORKBOOK.xlsx.\n",
      );
    if (!list || list.faults.length === 0) return 0;
    context.out(
      "What is not understood stands there with a question mark, as stops: correct it there, or in the list.\n",
    );
    return UNREAD;
  });
};
