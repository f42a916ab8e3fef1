/** Runs a command in a thread under limits of time and memory, so that no file can hold or fill the computer. */
import { Worker } from "node:worker_threads";
import type { Streams } from "./command.ts";
import { type Limits, memoryOf, watchThread } from "./limits.ts";

/** What the thread is started with. */
export interface Start {
  readonly name: string;
  readonly args: readonly string[];
  readonly interactive: boolean;
  readonly limits: Limits;
}

/** What the thread says. `catches`: it wants to be asked before it is interrupted. */
export type Said =
  | { readonly out: string }
  | { readonly note: string }
  | { readonly asks: "input" }
  | { readonly catches: boolean }
  | { readonly exit: number };

/** What the thread is told. */
export type Told = { readonly input: string } | { readonly cancel: true };

export const REFUSED = 2;
export const OWN_FAULT = 70;
/** 128 and the number of the interrupt, as shells count. */
export const CANCELLED = 130;

/** The exit code of the command. Each answer restarts the clock: a long list is not a long answer. */
export function guarded(start: Omit<Start, "interactive">, streams: Streams): Promise<number> {
  const { limits, name } = start;
  const worker = new Worker(new URL("./command.worker.js", import.meta.url), {
    workerData: { ...start, interactive: streams.interactive } satisfies Start,
    resourceLimits: memoryOf(limits),
  });
  return new Promise((settle) => {
    let catches = false;
    const interrupt = (): void => {
      if (catches) worker.postMessage({ cancel: true } satisfies Told);
      else finish(CANCELLED);
    };
    const finish = (code: number): void => {
      process.off("SIGINT", interrupt);
      clock.stop();
      void worker.terminate().then(() => settle(code));
    };
    const clock = watchThread(worker, limits, `shop ${name}`, (why) => {
      streams.note(`${why.message}\n`);
      finish(why.reason === "internal" ? OWN_FAULT : REFUSED);
    });
    process.on("SIGINT", interrupt);
    worker.on("message", async (said: Said) => {
      if ("exit" in said) finish(said.exit);
      else if ("catches" in said) catches = said.catches;
      else if ("asks" in said) worker.postMessage({ input: await streams.input() } satisfies Told);
      else if ("note" in said) streams.note(said.note);
      else {
        clock.restart();
        streams.out(said.out);
      }
    });
  });
}
