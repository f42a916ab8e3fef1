/**
 * `shop bill WORKBOOK.xlsx [--json]` and `shop bill PARTS.csv --shop WORKBOOK.xlsx [--json]`: the plan of a bill. Exit 0,
 * 1 where a line is stop, 2 where a file is refused.
 */
import { billJson } from "../../job/bill-json.ts";
import { billWords } from "./bill-words.ts";
import type { Command } from "./command.ts";
import { LIST_OPTIONS, listOptions, orRefused, planOfParts, planOfWorkbook } from "./job-files.ts";
import { readArguments, wrongPieces } from "./usage.ts";

const STOPPED = 1;

export const bill: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, {
    json: { type: "boolean" },
    all: { type: "boolean" },
    shop: { type: "string" },
    ...LIST_OPTIONS,
  });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1 || (values.shop === undefined && /\.(?:csv|txt|tsv)$/i.test(file)))
    throw wrongPieces("bill", "WORKBOOK.xlsx, or PARTS.csv --shop WORKBOOK.xlsx", positionals);
  return orRefused(context, () => {
    const { plan } =
      values.shop === undefined
        ? planOfWorkbook(file, context)
        : planOfParts(file, values.shop, context, listOptions(values));
    context.out(`${values.json ? JSON.stringify(billJson(plan)) : billWords(plan, values.all === true)}\n`);
    return plan.lines.some(({ status }) => status === "stop") ? STOPPED : 0;
  });
};
