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

/**
 * Whether so many milliseconds of it have gone since this was called. Asking the system costs a search a fifth of its time
 * where it is done every millisecond (measured), so it is asked again when half of what was left can have gone.
 */
export function timeIsUp(milliseconds: number): () => boolean {
  const start = processorTime();
  let next = performance.now() + milliseconds / 2;
  return () => {
    const now = performance.now();
    if (now < next) return false;
    const left = milliseconds - (processorTime() - start);
    next = now + Math.max(1, left / 2);
    return left <= 0;
  };
}
