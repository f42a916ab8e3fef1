/** What a command or a file may take before it is ended: processor time and memory. */
import type { Worker } from "node:worker_threads";
import { FileRefusal, refusal } from "../../sheet/package/file-refusal.ts";
import { type ProcessorClock, processorClock } from "./processor-time.ts";
import { UsageError } from "./usage.ts";

export interface Limits {
  /** Of processor time. */
  readonly seconds: number;
  readonly megabytes: number;
}

/** The sample takes about two seconds and 200 MB: common practice, far above any bill of a shop. */
export const LIMITS: Limits = { seconds: 60, megabytes: 1024 };

/** Takes `--seconds S` and `--memory MB` out of a command's arguments: every command has them. */
export function takeLimits(args: readonly string[]): { readonly limits: Limits; readonly rest: readonly string[] } {
  const given: Record<string, string | undefined> = {};
  const rest: string[] = [];
  const end = args.includes("--") ? args.indexOf("--") : args.length;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? "";
    const [, name, value] = (i < end && /^--(seconds|memory)(?:=(.*))?$/s.exec(arg)) || [];
    if (name) given[name] = value ?? args[++i] ?? "";
    else rest.push(arg);
  }
  const read = (name: string, usual: number): number => positive(`--${name}`, given[name], usual);
  return { limits: { seconds: read("seconds", LIMITS.seconds), megabytes: read("memory", LIMITS.megabytes) }, rest };
}

/** A positive number of the command line. Throws a UsageError. */
export function positive(option: string, given: string | undefined, otherwise: number): number {
  if (given === undefined) return otherwise;
  const value = Number(given);
  if (!(value > 0) || !Number.isFinite(value))
    throw new UsageError(`${option} must be a positive number; got ${given || "nothing"}`);
  return value;
}

/** How a thread is started that keeps to the limit of memory. */
export const memoryOf = ({ megabytes }: Limits) => ({ maxOldGenerationSizeMb: megabytes });

/**
 * Watches a thread during one piece of work, called `what` in the refusal. `ended` is told once why the thread must go:
 * it took too long or too much memory, or failed. Returns the clock, to be stopped when the work is done.
 */
export function watchThread(
  worker: Worker,
  limits: Limits,
  what: string,
  ended: (why: FileRefusal) => void,
): ProcessorClock {
  const clock = processorClock();
  const end = (why: FileRefusal): void => {
    stop();
    ended(why);
  };
  const failed = (error: Error & { code?: string }): void =>
    end(
      error.code === "ERR_WORKER_OUT_OF_MEMORY"
        ? refusal(
            "memory",
            what,
            `done within ${limits.megabytes} MB`,
            "no answer with that",
            "give it more with --memory",
          )
        : new FileRefusal("internal", error.message),
    );
  const look = setInterval(() => {
    if (clock.seconds() > limits.seconds)
      end(refusal("time", what, `done within ${limits.seconds} s`, "no answer by then", "give it more with --seconds"));
  }, 100);
  const stop = (): void => {
    clearInterval(look);
    clock.stop();
    worker.off("error", failed);
  };
  worker.on("error", failed);
  return { ...clock, stop };
}
