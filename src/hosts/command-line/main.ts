import { PRODUCT_VERSION } from "../../cells/record/version.generated.ts";
import { type CustomFunctions, noCustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { nearest } from "../../units/nearest.ts";
import type { Command, CommandContext } from "./command.ts";
import { fileFault } from "./file-fault.ts";
import { helpAsked, helpText } from "./help.ts";
import { UsageError } from "./usage.ts";

/** Subcommands of `shop`, each loaded when it is asked for: the start-up time of one does not burden the others. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  calc: async () => (await import("./calc.ts")).calc,
  recalc: async () => (await import("./recalc.ts")).recalc,
  start: async () => (await import("./start.ts")).start,
  bill: async () => (await import("./bill.ts")).bill,
  check: async () => (await import("./check.ts")).check,
  compare: async () => (await import("./compare.ts")).compare,
  functions: async () => (await import("./catalogue.ts")).functions,
  freeze: async () => (await import("./freeze.ts")).freeze,
  print: async () => (await import("./print.ts")).print,
  upgrade: async () => (await import("./upgrade.ts")).upgrade,
};

/** A file that cannot be read or written. */
const REFUSED = 2;
const USAGE = 64;
const OWN_FAULT = 70;

async function standardInput(): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of process.stdin) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString("utf8");
}

/** The path that a fault of the system names. */
const faultyPath = (error: unknown): string => (error as NodeJS.ErrnoException | undefined)?.path ?? "file";

/** recalc only hands out work, its threads load the functions themselves; a plan is made from the tables alone. */
const WITHOUT_FUNCTIONS = ["recalc", "bill", "check", "compare"];
const functionsFor = async (command: string): Promise<CustomFunctions> =>
  WITHOUT_FUNCTIONS.includes(command) ? noCustomFunctions : (await import("../../cells/catalogue.ts")).shopFunctions;

async function main(args: readonly string[]): Promise<number> {
  const asked = helpAsked(args);
  if (asked && (asked.command === undefined || Object.hasOwn(commands, asked.command))) {
    process.stdout.write(helpText(asked.command));
    return 0;
  }
  const [name = "", ...rest] = asked?.command === undefined ? args : [asked.command];
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  const context: CommandContext = {
    functions: load ? await functionsFor(name) : noCustomFunctions,
    version: PRODUCT_VERSION,
    out: (text) => process.stdout.write(text),
    note: (text) => process.stderr.write(text),
    input: standardInput,
    interactive: process.stderr.isTTY === true,
  };
  if (!load) {
    const names = Object.keys(commands);
    context.note(
      `shop must be followed by one of ${names.join(", ")}; got ${name}; nearest is ${nearest(name, names)}, and shop --help lists them\n`,
    );
    return USAGE;
  }
  try {
    return await (await load())(rest, context);
  } catch (error) {
    if (error instanceof UsageError) {
      context.note(`${error.message}\n`);
      return USAGE;
    }
    const fault = error instanceof FileRefusal ? error : fileFault(faultyPath(error), error, "unreadable");
    if (fault) {
      context.note(`${fault.message}\n`);
      return REFUSED;
    }
    context.note(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return OWN_FAULT;
  }
}

// A reader that has seen enough (head) closes the pipe: that is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : OWN_FAULT));

process.exitCode = await main(process.argv.slice(2));
