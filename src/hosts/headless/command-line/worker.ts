import { mkdirSync, readFileSync } from "node:fs";
import { dirname } from "node:path";
import { parentPort } from "node:worker_threads";
import type { CustomFunctions } from "../custom-functions.ts";
import { FileRefusal } from "../package/file-refusal.ts";
import { recalculateBytes, refusedFile } from "../recalculate/recalculate-bytes.ts";
import type { FileResult } from "../report/report.ts";
import type { Job } from "./plan-jobs.ts";
import { replaceFile } from "./replace-file.ts";
import type { RunOptions } from "./run-jobs.ts";

/** The worker's side of recalc: takes one job at a time, answers with its result. */
export function serveJobs(functions: CustomFunctions): void {
  parentPort?.on("message", ({ job, options }: { job: Job; options: RunOptions }) => {
    parentPort!.postMessage(runJob(job, options, functions));
  });
}

function runJob(job: Job, options: RunOptions, functions: CustomFunctions): FileResult {
  try {
    const bytes = readFileSync(job.from);
    const { result, output } = recalculateBytes(bytes, { functions, ...options, in: job.in, out: job.out });
    if (output && job.to !== null && !(result.report.changed === 0 && job.from === job.to)) {
      mkdirSync(dirname(job.to), { recursive: true });
      replaceFile(job.to, output);
    }
    return result;
  } catch (error) {
    return refusedFile(
      job.in,
      new FileRefusal("unreadable", error instanceof Error ? error.message : String(error)),
      0,
    );
  }
}
