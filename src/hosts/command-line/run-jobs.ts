import { Worker } from "node:worker_threads";
import { FileRefusal, refusal } from "../../sheet/package/file-refusal.ts";
import { refusedFile } from "../../sheet/report/refused-file.ts";
import type { FileResult } from "../../sheet/report/report.ts";
import type { Job } from "./plan-jobs.ts";

export interface RunOptions {
  readonly now: number | undefined;
  readonly verify: boolean;
}

export interface RunLimits {
  readonly seconds: number;
  readonly megabytes: number;
  readonly workers: number;
}

/**
 * Runs the jobs in worker threads, a file at a time each. A file that takes too long or too much memory costs its worker,
 * never the run: the worker is ended and another one started.
 */
export async function runJobs(
  jobs: readonly Job[],
  options: RunOptions,
  limits: RunLimits,
  done: (job: Job, result: FileResult) => void,
): Promise<FileResult[]> {
  const results: FileResult[] = new Array(jobs.length);
  let next = 0;
  const lane = async (): Promise<void> => {
    let worker: Worker | undefined;
    while (next < jobs.length) {
      const index = next++;
      const job = jobs[index]!;
      worker ??= startWorker(limits);
      const outcome = await runOne(worker, job, options, limits);
      if (outcome.lost) worker = undefined;
      results[index] = outcome.result;
      done(job, outcome.result);
    }
    await worker?.terminate();
  };
  await Promise.all(Array.from({ length: Math.min(limits.workers, jobs.length) }, lane));
  return results;
}

function startWorker(limits: RunLimits): Worker {
  return new Worker(new URL("./recalc.worker.js", import.meta.url), {
    resourceLimits: { maxOldGenerationSizeMb: limits.megabytes },
  });
}

function runOne(
  worker: Worker,
  job: Job,
  options: RunOptions,
  limits: RunLimits,
): Promise<{ readonly result: FileResult; readonly lost: boolean }> {
  return new Promise((settle) => {
    const started = performance.now();
    const seconds = (): number => Math.round(performance.now() - started) / 1000;
    const finish = (result: FileResult, lost: boolean): void => {
      clearTimeout(timer);
      worker.removeAllListeners("message").removeAllListeners("error");
      if (lost) void worker.terminate();
      settle({ result, lost });
    };
    const timer = setTimeout(() => {
      const ended = refusal(
        "time",
        "file",
        `recalculated within ${limits.seconds} s`,
        "no answer by then",
        "give it more with --seconds",
      );
      finish(refusedFile(job.in, ended, seconds()), true);
    }, limits.seconds * 1000);
    worker.on("message", (result: FileResult) => finish(result, false));
    worker.on("error", (error: Error & { code?: string }) => {
      const memory = error.code === "ERR_WORKER_OUT_OF_MEMORY";
      const ended = memory
        ? refusal(
            "memory",
            "file",
            `recalculated within ${limits.megabytes} MB`,
            "no answer with that",
            "give it more with --memory",
          )
        : new FileRefusal("internal", error.message);
      finish(refusedFile(job.in, ended, seconds()), true);
    });
    worker.postMessage({ job, options });
  });
}
