/**
 * npm run fuzz -- [--calls 20000] [--seed N] [--from 0]
 * Calls every cell function with anything at all. Prints the seed; the same seed, --from INDEX and --calls 1 replay one
 * call. Exit 1 where an answer is not finite, a sentence is outside the grammar, a call hangs or throws.
 */
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import type { Finding, Stretch } from "./run-calls.ts";

const HANG_S = 60; // chosen: the slowest sound call takes well under a second
const STRETCH = 50_000;
const SHOWN = 50;

const { values } = parseArgs({
  options: {
    calls: { type: "string", default: "20000" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
    from: { type: "string", default: "0" },
  },
});
const [calls, seed, from] = [values.calls, values.seed, values.from].map(Number);
if (![calls, seed, from].every((each) => Number.isInteger(each) && each! >= 0)) {
  console.error("--calls, --seed and --from must be whole numbers from 0");
  process.exit(64);
}
console.log(`seed ${seed}, calls ${from} to ${from! + calls! - 1}`);

const found: Finding[] = [];
const started = performance.now();
for (let done = 0; done < calls!; done += STRETCH)
  found.push(...(await watched({ seed: seed!, from: from! + done, calls: Math.min(STRETCH, calls! - done) })));
const seconds = (performance.now() - started) / 1000;
for (const { index, name, problem } of found.slice(0, SHOWN)) console.log(`call ${index} ${name}: ${problem}`);
const megabytes = Math.round(process.resourceUsage().maxRSS / 1024);
console.log(`${calls} calls, ${found.length} findings, ${seconds.toFixed(0)} s, at most ${megabytes} MB`);
process.exitCode = found.length > 0 ? 1 : 0;

/** The findings of a stretch; a call that takes longer than a minute, or ends the thread, is one, and the last of it. */
function watched(stretch: Stretch): Promise<Finding[]> {
  const progress = new Int32Array(new SharedArrayBuffer(4));
  return new Promise((resolve) => {
    const worker = new Worker(new URL("./calls.worker.js", import.meta.url), { workerData: { stretch, progress } });
    let seen = -1;
    let since = Date.now();
    const end = (findings: Finding[]): void => {
      clearInterval(watch);
      void worker.terminate();
      resolve(findings);
    };
    const stopped = (problem: string) => end([{ index: Atomics.load(progress, 0), name: "", problem }]);
    const watch = setInterval(() => {
      const now = Atomics.load(progress, 0);
      if (now !== seen) [seen, since] = [now, Date.now()];
      else if (Date.now() - since > HANG_S * 1000) stopped(`no answer in ${HANG_S} s`);
    }, 1000);
    worker.once("message", end);
    worker.once("error", (problem) => stopped(`ended the thread: ${problem.message}`));
  });
}
