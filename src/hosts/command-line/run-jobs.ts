import { Worker } from "node:worker_threads";
import { refusedFile } from "../../sheet/report/refused-file.ts";
import type { FileResult } from "../../sheet/report/report.ts";
import { itemAt } from "../../units/certain.ts";
import { type Limits, memoryOf, watchThread } from "./limits.ts";
import type { Job } from "./plan-jobs.ts";

export interface RunOptions {
  readonly now: number | undefined;
  readonly verify: boolean;
}

interface RunLimits extends Limits {
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
      const job = itemAt(jobs, index);
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
  return new Worker(new URL("./recalc.worker.js", import.meta.url), { resourceLimits: memoryOf(limits) });
}

function runOne(
  worker: Worker,
  job: Job,
  options: RunOptions,
  limits: RunLimits,
): Promise<{ readonly result: FileResult; readonly lost: boolean }> {
  return new Promise((settle) => {
    const started = performance.now();
    const clock = watchThread(worker, limits, "file", (why) => {
      worker.removeAllListeners("message");
      void worker.terminate();
      settle({ result: refusedFile(job.in, why, Math.round(performance.now() - started) / 1000), lost: true });
    });
    worker.once("message", (result: FileResult) => {
      clock.stop();
      settle({ result, lost: false });
    });
    worker.postMessage({ job, options });
  });
}
