/** The thread of a series: says before each trial which one it is, and tells what was wrong with any. */
import { parentPort, workerData } from "node:worker_threads";
import type { Stretch, Told } from "./series.ts";
import { tryCall } from "./try-call.ts";
import { tryFile } from "./try-file.ts";

const { work, stretch, progress } = workerData as {
  work: "calls" | "files";
  stretch: Stretch;
  progress: Int32Array;
};
const tell = (told: Told): void => parentPort?.postMessage(told);
/** Told every so often, so that a trial that costs the thread does not take the statistics of the others with it. */
const TELL_EVERY = 20;
let outcomes: Record<string, number> = {};
const end = stretch.from + stretch.count;
for (let index = stretch.from; index < end; index++) {
  Atomics.store(progress, 0, index);
  const { outcome, problem } = (work === "calls" ? tryCall : tryFile)(stretch.seed, index);
  outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
  if (problem !== undefined) tell({ finding: { index, problem } });
  if (index % TELL_EVERY === 0) {
    tell({ outcomes });
    outcomes = {};
  }
}
tell({ outcomes });
tell("done");
