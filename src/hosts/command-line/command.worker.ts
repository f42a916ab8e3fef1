/** The thread of a command: says what it writes, asks for what it reads, ends with its exit code. */
import { parentPort, workerData } from "node:worker_threads";
import { missing } from "../../units/certain.ts";
import { runCommand } from "./commands.ts";
import type { Said, Start, Told } from "./guard.ts";

const { name, args, interactive, limits } = workerData as Start;
const say = (said: Said): void => (parentPort ?? missing()).postMessage(said);

const cancels = new Set<() => void>();
let answered: ((input: string) => void) | undefined;
(parentPort ?? missing()).on("message", (told: Told) => {
  if ("input" in told) answered?.(told.input);
  else for (const cancel of cancels) cancel();
});

const exit = await runCommand(name, args, {
  out: (out) => say({ out }),
  note: (note) => say({ note }),
  input: () => {
    say({ asks: "input" });
    return new Promise((resolve) => {
      answered = resolve;
    });
  },
  onCancel: (cancel) => {
    cancels.add(cancel);
    say({ catches: true });
    return () => {
      cancels.delete(cancel);
      say({ catches: cancels.size > 0 });
    };
  },
  interactive,
  limits,
});
say({ exit });
