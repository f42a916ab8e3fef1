import type { CustomFunctions } from "../../sheet/evaluate/custom-functions.ts";

/** Where a command writes: standard output for answers, standard error for everything else. */
export interface Streams {
  readonly out: (text: string) => void;
  readonly note: (text: string) => void;
  /** All of standard input; asked for only by commands that read it. */
  readonly input: () => Promise<string>;
  /** Progress bars only where someone can see them. */
  readonly interactive: boolean;
}

export interface CommandContext extends Streams {
  readonly functions: CustomFunctions;
  readonly version: string;
}

/** A subcommand of `shop`: its arguments in, its exit code out. */
export type Command = (args: readonly string[], context: CommandContext) => Promise<number>;
