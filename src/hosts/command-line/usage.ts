import { type ParseArgsConfig, parseArgs } from "node:util";
import { nearestIs } from "../../units/nearest.ts";
import { message } from "../../units/refusal.ts";

/** Thrown for an option or argument the command does not know: exit 64 (EX_USAGE of sysexits.h). */
export class UsageError {
  constructor(readonly message: string) {}
}

/** parseArgs of Node, with its complaints as a UsageError in the grammar of refusals. */
export function readArguments<T extends NonNullable<ParseArgsConfig["options"]>>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: withNumbers(args, options), options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(complaint(error instanceof Error ? error.message : String(error), Object.keys(options)));
  }
}

/** A number below 0 belongs to the option before it, which then refuses it by its own rule. */
function withNumbers(args: readonly string[], options: NonNullable<ParseArgsConfig["options"]>): string[] {
  const takes = (last = "") => last.startsWith("--") && options[last.slice(2)]?.type === "string";
  const read: string[] = [];
  for (const arg of args)
    if (/^-[\d.]/.test(arg) && takes(read.at(-1))) read.push(`${read.pop()}=${arg}`);
    else read.push(arg);
  return read;
}

/** By the words of Node: "Unknown option '--part'. To ...", "Option '--shop <value>' argument missing". */
function complaint(said: string, options: readonly string[]): string {
  const [, given = ""] = /'(-{1,2}[^' ]*)/.exec(said) ?? [];
  const names = [...options, "seconds", "memory"].map((name) => `--${name}`);
  if (said.startsWith("Unknown option"))
    return message("option", `one of ${names.join(", ")}`, given, nearestIs(given, names));
  if (/missing|ambiguous/.test(said)) return `${given} must be followed by what it says; got nothing`;
  return /does not take/.test(said) ? `${given} must stand alone; got a value` : said;
}

/** Wrong pieces behind a command's name. A name with a blank comes as several where its quotes are missing. */
export function wrongPieces(command: string, takes: string, pieces: readonly string[]): UsageError {
  const whole = pieces.join(" ");
  const quotes =
    pieces.length > 1 && /\.(?:xls[xm]|csv)$/i.test(whole) ? `a name with a blank stands in quotes: "${whole}"` : "";
  return new UsageError(message(command, `followed by ${takes}`, whole || "nothing", quotes));
}
