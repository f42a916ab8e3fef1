/**
 * A series of random trials in a thread of its own, under limits of time and memory. A trial that breaks a limit costs its
 * thread, never the series: it is noted, and the next thread begins behind it.
 */
import { Worker } from "node:worker_threads";
import { processorClock } from "../../hosts/command-line/processor-time.ts";

export interface Stretch {
  readonly seed: number;
  readonly from: number;
  readonly count: number;
}

export interface Finding {
  readonly index: number;
  readonly problem: string;
}

export interface SeriesLimits {
  readonly seconds: number;
  readonly megabytes: number;
}

interface SeriesResult {
  readonly findings: readonly Finding[];
  /** Trials ended by a limit: "time" or "memory". */
  readonly stopped: readonly Finding[];
  /** How often each outcome that a trial names came out. */
  readonly outcomes: Readonly<Record<string, number>>;
}

/** What the thread tells: a finding, how often each outcome came since it last told, the end of its stretch. */
export type Told = { readonly finding: Finding } | { readonly outcomes: Readonly<Record<string, number>> } | "done";

const STRETCH = 20_000;
/** What the thread says before its first trial: loading the program counts for no trial. */
const LOADING = -1;

export async function runSeries(work: "calls" | "files", all: Stretch, limits: SeriesLimits): Promise<SeriesResult> {
  const findings: Finding[] = [];
  const stopped: Finding[] = [];
  const outcomes: Record<string, number> = {};
  const end = all.from + all.count;
  for (let from = all.from; from < end; ) {
    const stretch = { seed: all.seed, from, count: Math.min(STRETCH, end - from) };
    const stop = await runThread(work, stretch, limits, (told) => {
      if ("finding" in told) findings.push(told.finding);
      else for (const [name, times] of Object.entries(told.outcomes)) outcomes[name] = (outcomes[name] ?? 0) + times;
    });
    from = stop ? stop.index + 1 : from + stretch.count;
    if (stop?.problem === "time" || stop?.problem === "memory") stopped.push(stop);
    else if (stop) findings.push(stop);
  }
  return { findings, stopped, outcomes };
}

/** Runs one stretch; where a limit or a crash ends the thread, the trial that did it. */
function runThread(
  work: "calls" | "files",
  stretch: Stretch,
  { seconds, megabytes }: SeriesLimits,
  tell: (told: Exclude<Told, "done">) => void,
): Promise<Finding | undefined> {
  const progress = new Int32Array(new SharedArrayBuffer(4));
  progress[0] = LOADING;
  return new Promise((settle) => {
    const worker = new Worker(new URL("./series.worker.js", import.meta.url), {
      workerData: { work, stretch, progress },
      resourceLimits: { maxOldGenerationSizeMb: megabytes },
    });
    let seen = LOADING;
    const clock = processorClock();
    const finish = (problem?: string): void => {
      clearInterval(watch);
      clock.stop();
      void worker.terminate();
      settle(problem === undefined ? undefined : { index: Math.max(stretch.from, Atomics.load(progress, 0)), problem });
    };
    const watch = setInterval(() => {
      const now = Atomics.load(progress, 0);
      if (now !== seen) clock.restart();
      else if (now !== LOADING && clock.seconds() > seconds) finish("time");
      seen = now;
    }, 250);
    worker.on("message", (told: Told) => {
      if (told === "done") finish();
      else tell(told);
    });
    worker.once("error", (problem: Error & { code?: string }) =>
      finish(problem.code === "ERR_WORKER_OUT_OF_MEMORY" ? "memory" : `ended the thread: ${problem.message}`),
    );
  });
}
