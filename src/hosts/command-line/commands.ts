import { PRODUCT_VERSION } from "../../cells/record/version.generated.ts";
import { type CustomFunctions, noCustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { missing } from "../../units/certain.ts";
import { nearestIs } from "../../units/nearest.ts";
import { message } from "../../units/refusal.ts";
import type { Command, Streams } from "./command.ts";
import { fileFault } from "./file-fault.ts";
import { OWN_FAULT, REFUSED } from "./guard.ts";
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
  report: async () => (await import("./report.ts")).report,
  week: async () => (await import("./week.ts")).week,
  upgrade: async () => (await import("./upgrade.ts")).upgrade,
};

export const commandNames: readonly string[] = Object.keys(commands);

/** Not typed by people: the page's server asks it before it serves a file. */
const INTERNAL: typeof commands = { open: async () => (await import("./open.ts")).open };

/** Commands without a thread of their own: recalc and report give each file one, functions reads nothing. */
export const UNGUARDED: readonly string[] = ["recalc", "report", "functions"];

const USAGE = 64; // EX_USAGE of sysexits.h

/** recalc only hands out work, its threads load the functions themselves; a plan is made from the tables alone. */
const WITHOUT_FUNCTIONS = ["recalc", "report", "open", "bill", "check", "compare", "week"];
const functionsFor = async (command: string): Promise<CustomFunctions> =>
  WITHOUT_FUNCTIONS.includes(command) ? noCustomFunctions : (await import("../../cells/catalogue.ts")).shopFunctions;

/** The path that a fault of the system names. */
const faultyPath = (error: unknown): string => (error as NodeJS.ErrnoException | undefined)?.path ?? "file";

/** Runs one command and says what went wrong: 64 for wrong use, 2 for a file that cannot be read or written, 70 for a fault of our own. */
export async function runCommand(name: string, args: readonly string[], streams: Streams): Promise<number> {
  try {
    const command = await ({ ...commands, ...INTERNAL }[name] ?? missing())();
    return await command(args, { ...streams, functions: await functionsFor(name), version: PRODUCT_VERSION });
  } catch (error) {
    if (error instanceof UsageError) {
      streams.note(`${error.message}\n`);
      return USAGE;
    }
    const fault = error instanceof FileRefusal ? error : fileFault(faultyPath(error), error, "unreadable");
    if (fault) {
      streams.note(`${fault.message}\n`);
      return REFUSED;
    }
    streams.note(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return OWN_FAULT;
  }
}

export const wrongCommand = (name: string): UsageError =>
  new UsageError(
    message(
      "shop",
      `followed by one of view, ${commandNames.join(", ")}`,
      name || "nothing",
      nearestIs(name, ["view", ...commandNames]) ?? "shop --help says what each does",
    ),
  );

/** What a wrong use says, and its exit code. */
export function saidUsage(error: unknown, streams: Pick<Streams, "note">): number {
  if (!(error instanceof UsageError)) throw error;
  streams.note(`${error.message}\n`);
  return USAGE;
}
