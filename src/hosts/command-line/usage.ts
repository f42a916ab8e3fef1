import { type ParseArgsConfig, parseArgs } from "node:util";

/** Thrown for an option or argument the command does not know: exit 64 (EX_USAGE of sysexits.h). */
export class UsageError {
  constructor(readonly message: string) {}
}

/** parseArgs of Node, with its complaints as a UsageError. */
export function readArguments<T extends NonNullable<ParseArgsConfig["options"]>>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
