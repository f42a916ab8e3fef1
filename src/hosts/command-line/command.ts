import type { CustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import type { Limits } from "./limits.ts";

/** Where a command writes: standard output for answers, standard error for everything else. */
export interface Streams {
  readonly out: (text: string) => void;
  readonly note: (text: string) => void;
  /** All of standard input; asked for only by commands that read it. */
  readonly input: () => Promise<string>;
  /** Progress bars only where someone can see them. */
  readonly interactive: boolean;
  /** While a command catches interrupts, it is asked to end and is not ended. Answers how to stop catching them. */
  readonly onCancel?: (cancel: () => void) => () => void;
  /** For a command that gives each of its files a thread; the usual ones where there are none. */
  readonly limits?: Limits;
}

export interface CommandContext extends Streams {
  readonly functions: CustomFunctions;
  readonly version: string;
}

/** A subcommand of `shop`: its arguments in, its exit code out. */
export type Command = (args: readonly string[], context: CommandContext) => Promise<number>;
