import type { Streams } from "./command.ts";
import { commandNames, runCommand, saidUsage, UNGUARDED, wrongCommand } from "./commands.ts";
import { fileFault } from "./file-fault.ts";
import { guarded, OWN_FAULT, REFUSED } from "./guard.ts";
import { HELP, helpAsked, helpText } from "./help.ts";
import { takeLimits } from "./limits.ts";

async function standardInput(): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of process.stdin) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString("utf8");
}

const streams: Streams = {
  out: (text) => process.stdout.write(text),
  note: (text) => process.stderr.write(text),
  input: standardInput,
  interactive: process.stderr.isTTY === true,
};

async function main(given: readonly string[]): Promise<number> {
  const asked = helpAsked(given);
  if (asked && (asked.command === undefined || asked.command in HELP)) {
    streams.out(helpText(asked.command));
    return 0;
  }
  const [name = "", ...args] = asked?.command === undefined ? given : [asked.command];
  try {
    if (!commandNames.includes(name)) throw wrongCommand(name);
    const { limits, rest } = takeLimits(args);
    return await (UNGUARDED.includes(name)
      ? runCommand(name, rest, { ...streams, limits })
      : guarded({ name, args: rest, limits }, streams));
  } catch (error) {
    return saidUsage(error, streams);
  }
}

process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0); // a reader that has seen enough (head) closes the pipe: that is not a fault
  const fault = fileFault("standard output", error, "unwritable");
  streams.note(`${fault?.message ?? error.message}\n`);
  process.exit(fault ? REFUSED : OWN_FAULT);
});

process.exitCode = await main(process.argv.slice(2));
