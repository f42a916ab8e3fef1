import { availableParallelism } from "node:os";
import { serialOfIso } from "../../sheet/formula/serial-now.ts";
import { exitCode, makeReport } from "../../sheet/report/report.ts";
import { callerPath } from "./caller.ts";
import type { Command } from "./command.ts";
import { LIMITS, positive } from "./limits.ts";
import { planJobs } from "./plan-jobs.ts";
import { progressBar } from "./progress-bar.ts";
import { replaceFile } from "./replace-file.ts";
import { runJobs } from "./run-jobs.ts";
import { summaryLine } from "./summary-line.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop recalc IN OUT [--report FILE] [--verify] [--in-place] [--now ISO] [--json] [--jobs N] [--seconds S] [--memory MB]` */
export const recalc: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, {
    report: { type: "string" },
    verify: { type: "boolean" },
    "in-place": { type: "boolean" },
    now: { type: "string" },
    json: { type: "boolean" },
    jobs: { type: "string" },
  });
  const now = values.now === undefined ? undefined : serialOfIso(values.now);
  if (values.now !== undefined && now === undefined) {
    throw new UsageError(`--now must be a date or a date and time as in 2026-03-14T09:00; got ${values.now}`);
  }
  const jobs = planJobs(positionals, { verify: values.verify === true, inPlace: values["in-place"] === true });
  const limits = {
    ...(context.limits ?? LIMITS),
    workers: Math.round(positive("--jobs", values.jobs, Math.max(1, availableParallelism()))),
  };
  const bar = progressBar(jobs.length, context);
  const results = await runJobs(jobs, { now, verify: values.verify === true }, limits, (job, result) => {
    bar.step(job.in);
    if (!context.interactive || result.report.status !== "fresh" || result.report.note)
      bar.say(summaryLine(result.report));
  });
  bar.end();
  const report = makeReport(context.version, results);
  const text = `${JSON.stringify(report)}\n`;
  if (values.report !== undefined) replaceFile(callerPath(values.report), new TextEncoder().encode(text));
  if (values.json) context.out(text);
  return exitCode(report);
};
