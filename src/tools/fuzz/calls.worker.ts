/** Runs a stretch of random calls in a thread of its own, so that a call that hangs can be seen and stopped. */
import { parentPort, workerData } from "node:worker_threads";
import { runCalls, type Stretch } from "./run-calls.ts";

const { stretch, progress } = workerData as { stretch: Stretch; progress: Int32Array };
const found = runCalls(stretch, (index) => Atomics.store(progress, 0, index));
parentPort!.postMessage(found);
