/**
 * Milliseconds of the processor's time that this process has used, so that a machine at other work measures the same. Worker
 * threads share it: they go by the clock on the wall.
 */
import { isMainThread } from "node:worker_threads";

export function processorTime(): number {
  if (!isMainThread) return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / MICROSECONDS;
}

const MICROSECONDS = 1000; // in a millisecond, by definition
