/** The week as its page shows it, and what the page and the week's thread say to one another. Times are seconds of `Instant`. */
import type { Instant } from "../../../bill/pictures.ts";
import type { MovedBar } from "../../../bill/week/move-bar.ts";
import type { StationDay } from "../../../bill/week/week.ts";

/** A line at a station: its lots are one bar. */
export interface Bar {
  readonly row: number;
  readonly part: string;
  readonly station: string;
  readonly machine: string;
  readonly begins: Instant;
  readonly finish: Instant;
  /** "80 pieces on Brake 1, set up for V 1, Plain" */
  readonly says: string;
  readonly isStarted: boolean;
  readonly isAway: boolean;
  readonly pin: Instant | undefined;
  /** Where it stood before the last move, when that was elsewhere. */
  readonly was: readonly [begins: Instant, finish: Instant] | undefined;
}

export interface BoardJob {
  readonly name: string;
  readonly isRush: boolean;
  readonly deliveries: readonly {
    readonly due: Instant | undefined;
    readonly finish: Instant;
    readonly late: number;
  }[];
  readonly late: number;
  /** "must leave Thu 2026-05-21 12:00, done Wed 2026-05-20 07:40" */
  readonly says: string;
  /** "late by 92.6 h", "in time", "no date", "same as school-lockers". */
  readonly verdict: string;
  /** Of a late one the machines that decide when it is done. */
  readonly decides: string;
  readonly bars: readonly Bar[];
}

export interface Pinned {
  readonly job: string;
  readonly line: string;
  /** As the bill's column "Pinned" takes it. */
  readonly mark: string;
}

export interface WeekBoard {
  readonly now: Instant;
  readonly jobs: readonly BoardJob[];
  readonly days: readonly StationDay[];
  readonly figures: readonly (readonly [name: string, value: string])[];
  /** Of this session, the last move first. */
  readonly pins: readonly Pinned[];
  /** Pins of the last move that could not be kept, a sentence each. */
  readonly missed: readonly string[];
  /** What the last move has done, a sentence each. */
  readonly moves: readonly string[];
  readonly faults: readonly string[];
}

export interface WeekFile {
  readonly name: string;
  /** A sentence where the file cannot be read. */
  readonly bytes: Uint8Array | string;
}

export type WeekRequest =
  /** Answered at once, by the first plan that was found; `moves` are made again. */
  | {
      readonly ask: "open";
      readonly files: readonly WeekFile[];
      readonly shop: Uint8Array | undefined;
      /** ISO; undefined: by the clock. */
      readonly now: string | undefined;
      readonly moves: readonly MovedBar[];
    }
  /** Searches for a better one. */
  | { readonly ask: "search" }
  | { readonly ask: "move"; readonly moved: MovedBar }
  | { readonly ask: "undo" }
  | { readonly ask: "rescues"; readonly job: string };

export type WeekAnswer =
  | { readonly said: "week"; readonly board: WeekBoard }
  | { readonly said: "rescues"; readonly ways: readonly string[] }
  | { readonly said: "refused"; readonly message: string };
