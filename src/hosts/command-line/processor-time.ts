/**
 * The processor time that threads of this process take: a busy machine is not held against a file, and waiting costs
 * nothing. Node 20 reports only the time of the whole process, so what runs at once shares it.
 */

interface Meter {
  used: number;
}

const TICK_MS = 100;
const running = new Set<Meter>();
let timer: ReturnType<typeof setInterval> | undefined;
let last = { cpu: process.cpuUsage(), wall: performance.now() };

export interface ProcessorClock {
  /** Seconds since the start, or since `restart`. */
  seconds(): number;
  restart(): void;
  stop(): void;
}

/** Begins to measure one thread that works from now on. */
export function processorClock(): ProcessorClock {
  const meter = { used: 0 };
  charge();
  running.add(meter);
  timer ??= setInterval(charge, TICK_MS);
  return {
    seconds: () => meter.used,
    restart: () => {
      meter.used = 0;
    },
    stop: () => {
      running.delete(meter);
      if (running.size > 0) return;
      clearInterval(timer);
      timer = undefined;
    },
  };
}

/** A thread cannot have worked for longer than the clock on the wall: the rest are helpers of the engine. */
function charge(): void {
  const [cpu, wall] = [process.cpuUsage(), performance.now()];
  const spent = (cpu.user + cpu.system - last.cpu.user - last.cpu.system) / 1e6;
  const share = Math.min(spent / Math.max(1, running.size), (wall - last.wall) / 1000);
  for (const meter of running) meter.used += share;
  last = { cpu, wall };
}
