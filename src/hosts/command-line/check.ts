/** `shop check PARTS.csv --shop WORKBOOK.xlsx [--json]`: every part of a list in the shop of a workbook. Exits as `bill` does. */

import { mendSentence } from "../../bill/fix-says.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { STATUSES } from "../../bill/problems.ts";
import { problemsSay } from "../../bill/says.ts";
import { partsJson } from "../../job/bill-json.ts";
import { fromInternal } from "../../units/system.ts";
import type { Command } from "./command.ts";
import { orRefused, planOfParts } from "./job-files.ts";
import { readArguments, UsageError } from "./usage.ts";
import { writeCsv } from "./write-csv.ts";

const STOPPED = 1;

export const check: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" }, shop: { type: "string" } });
  const [file] = positionals;
  const { shop } = values;
  if (file === undefined || positionals.length > 1 || shop === undefined)
    throw new UsageError("check takes PARTS.csv --shop WORKBOOK.xlsx");
  return orRefused(context, () => {
    const plan = planOfParts(file, shop, context);
    const counts = STATUSES.map((name) => [name, plan.lines.filter(({ status }) => status === name).length] as const);
    if (values.json) {
      for (const part of partsJson(plan)) context.out(`${JSON.stringify(part)}\n`);
      context.out(`${JSON.stringify({ summary: { parts: plan.lines.length, ...Object.fromEntries(counts) } })}\n`);
    } else {
      context.out(writeCsv([HEADER, ...rowsOf(plan)]));
      context.note(`${plan.lines.length} parts: ${counts.map(([name, count]) => `${count} ${name}`).join(", ")}\n`);
    }
    return plan.lines.some(({ status }) => status === "stop") ? STOPPED : 0;
  });
};

/** flat is its length in the shop's unit, tons are of 2,000 lb in any shop. */
const HEADER = ["part", "row", "flat", "tons", "status", "reason"];

const rowsOf = (plan: BillPlan) =>
  plan.lines.map((line) => {
    const { system } = plan.shop;
    const [worst = ""] = problemsSay(line.findings, system);
    const said = [worst, mendSentence(line.findings, plan.fix(line), system)].filter((text) => text !== "").join(" ");
    const { blank, force } = line.plan ?? {};
    return [
      line.part,
      line.row,
      blank && rounded(fromInternal(blank.length, "length", system), 4),
      force && rounded(fromInternal(force.expected, "force", "in"), 1),
      line.status,
      said,
    ];
  });

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
