/**
 * `shop report FILE [OUT.txt]`: a text about a fault, for whoever mends it: versions, sizes and the refusal. No cell, no
 * name and no price of the file is in it, and nothing is sent. Exit 0, 2 where the file cannot be read at all.
 */
import { freemem, totalmem } from "node:os";
import type { FileResult } from "../../sheet/report/report.ts";
import { missing } from "../../units/certain.ts";
import { callerPath } from "./caller.ts";
import type { Command, CommandContext } from "./command.ts";
import { guarded } from "./guard.ts";
import { LIMITS, type Limits } from "./limits.ts";
import { bytesOf } from "./read-file.ts";
import { replaceFile } from "./replace-file.ts";
import { faultPlaces, fileSizes, refusalRule } from "./report-text.ts";
import { runJobs } from "./run-jobs.ts";
import { readArguments, UsageError } from "./usage.ts";

export const report: Command = async (args, context) => {
  const [given, out, ...more] = readArguments(args, {}).positionals;
  if (given === undefined || more.length > 0)
    throw new UsageError("report takes FILE, and OUT.txt where it is to be kept");
  const bytes = bytesOf(given);
  const limits = context.limits ?? LIMITS;
  const isWorkbook = bytes[0] === 0x50 && bytes[1] === 0x4b; // "PK": a zip
  const lines = [
    ...machine(context.version),
    ...fileSizes(bytes, isWorkbook),
    ...(isWorkbook
      ? [...recalculated(await calculate(given, limits)), ...(await planned(given, context, limits))]
      : []),
    "No cell, name or price of the file stands here, and nothing was sent.",
  ];
  const text = `${lines.join("\n")}\n`;
  if (out === undefined) context.out(text);
  else {
    replaceFile(callerPath(out), new TextEncoder().encode(text));
    context.note(`${out}: ${lines.length} lines; read them before you hand them on\n`);
  }
  return 0;
};

const machine = (version: string): string[] => [
  `Bracket Bill ${version}, Node ${process.versions.node}, ${process.platform} ${process.arch}`,
  `Memory: ${megabytes(totalmem())} MB, ${megabytes(freemem())} MB free`,
];
const megabytes = (bytes: number): number => Math.round(bytes / 1024 / 1024);

async function calculate(given: string, limits: Limits): Promise<FileResult> {
  const job = { in: given, out: null, from: callerPath(given), to: null };
  const [result] = await runJobs([job], { now: undefined, verify: false }, { ...limits, workers: 1 }, () => {});
  return result ?? missing();
}

function recalculated({ report: { refused, ...found } }: FileResult): string[] {
  if (refused) return [`Recalculation: refused, ${refused.reason}: ${refusalRule(refused.message)}`];
  const reasons = [...new Set(found.kept.map(({ reason }) => reason))];
  const kept = reasons.map((each) => `${found.kept.filter(({ reason }) => reason === each).length} ${each}`);
  return [
    `Recalculation: ${found.status}, ${found.formulas} formulas, ${found.changed} cells changed, ${found.seconds} s`,
    `Kept: ${kept.join(", ") || "none"}; depend on them: ${found.stale.length}; circles: ${found.circular.length}`,
  ];
}

/** How the plan of the bill ends; of a fault of our own the places in the program, and not its words. */
async function planned(given: string, context: CommandContext, limits: Limits): Promise<string[]> {
  let notes = "";
  const note = (text: string) => {
    notes += text;
  };
  const quiet = { out: () => {}, note, input: context.input, interactive: false };
  const exit = await guarded({ name: "bill", args: [given, "--json"], limits }, quiet);
  if (exit <= 1) return [`Bill: planned, exit ${exit}`];
  return [`Bill: exit ${exit}${exit === 2 ? `: ${refusalRule(notes)}` : ""}`, ...faultPlaces(notes)];
}
