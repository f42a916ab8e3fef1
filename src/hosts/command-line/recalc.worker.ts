import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import { parentPort } from "node:worker_threads";
import { shopFunctions } from "../../cells/catalogue.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";
import { refusedFile } from "../../sheet/report/refused-file.ts";
import type { FileResult } from "../../sheet/report/report.ts";
import { missing } from "../../units/certain.ts";
import { fileFault } from "./file-fault.ts";
import type { Job } from "./plan-jobs.ts";
import { bytesOf } from "./read-file.ts";
import { replaceFile } from "./replace-file.ts";
import type { RunOptions } from "./run-jobs.ts";

function runJob(job: Job, options: RunOptions): FileResult {
  let writing = false;
  try {
    const bytes = bytesOf(job.from);
    const { result, output } = recalculateBytes(bytes, {
      functions: shopFunctions,
      ...options,
      in: job.in,
      out: job.out,
    });
    if (output && job.to !== null && !(result.report.changed === 0 && job.from === job.to)) {
      writing = true;
      mkdirSync(dirname(job.to), { recursive: true });
      replaceFile(job.to, output);
    }
    return result;
  } catch (error) {
    if (error instanceof FileRefusal) return refusedFile(job.in, error, 0);
    const reason = writing ? "unwritable" : "unreadable";
    const message = error instanceof Error ? error.message : String(error);
    const fault =
      fileFault(writing ? (job.out ?? missing()) : job.in, error, reason) ?? new FileRefusal(reason, message);
    return refusedFile(job.in, fault, 0);
  }
}

/** Runs in a thread of its own: takes one job at a time, answers with its result. */
parentPort?.on("message", ({ job, options }: { job: Job; options: RunOptions }) => {
  (parentPort ?? missing()).postMessage(runJob(job, options));
});
