/**
 * `shop check PARTS.csv --shop WORKBOOK.xlsx [--json]`: every part of a list in the shop of a workbook; `shop check
 * WORKBOOK.xlsx`: every part of its own bill. Exits as `bill` does.
 */

import { mendSentence } from "../../bill/fix-says.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { STATUSES } from "../../bill/problems.ts";
import { problemsSay } from "../../bill/says.ts";
import { partsJson } from "../../job/bill-json.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import { isWorkbook } from "./caller.ts";
import type { Command } from "./command.ts";
import { LIST_OPTIONS, listOptions, orRefused, planOfParts, planOfWorkbook } from "./job-files.ts";
import { readArguments, wrongPieces } from "./usage.ts";
import { writeCsv } from "./write-csv.ts";

const STOPPED = 1;

export const check: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, {
    json: { type: "boolean" },
    shop: { type: "string" },
    ...LIST_OPTIONS,
  });
  const [file] = positionals;
  const { shop } = values;
  if (file === undefined || positionals.length > 1 || (shop === undefined && !isWorkbook(file)))
    throw wrongPieces(
      "check",
      "PARTS.csv --shop WORKBOOK.xlsx, or a WORKBOOK.xlsx with a bill of its own",
      positionals,
    );
  return orRefused(context, () => {
    const { plan, above } =
      shop === undefined ? planOfWorkbook(file, context) : planOfParts(file, shop, context, listOptions(values));
    const counts = STATUSES.map((name) => [name, plan.lines.filter(({ status }) => status === name).length] as const);
    if (values.json) {
      for (const part of partsJson(plan, above)) context.out(`${JSON.stringify(part)}\n`);
      context.out(`${JSON.stringify({ summary: { parts: plan.lines.length, ...Object.fromEntries(counts) } })}\n`);
    } else {
      context.out(writeCsv([headerOf(plan), ...rowsOf(plan, above)]));
      context.note(`${plan.lines.length} parts: ${counts.map(([name, count]) => `${count} ${name}`).join(", ")}\n`);
    }
    return plan.lines.some(({ status }) => status === "stop") ? STOPPED : 0;
  });
};

/** flat is its length, tons are of 2,000 lb in any shop. */
const headerOf = ({ shop: { system } }: BillPlan): string[] => [
  ...["part", "row", `flat (${unitName("length", system)})`, "tons", "status", "reason"],
];

/** @param above rows of the file above the heading: a line is known by the row it stands in. */
const rowsOf = (plan: BillPlan, above: number) =>
  plan.lines.map((line) => {
    const { system } = plan.shop;
    const [worst = ""] = problemsSay(line.findings, system);
    const said = [worst, mendSentence(line.findings, plan.fix(line), system)].filter((text) => text !== "").join(" ");
    const { blank, force } = line.plan ?? {};
    return [
      line.part,
      line.row + above,
      blank && rounded(fromInternal(blank.length, "length", system), 4),
      force && rounded(fromInternal(force.expected, "force", "in"), 1),
      line.status,
      said,
    ];
  });

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
