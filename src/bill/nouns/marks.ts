/** What the floor has marked on a line: what is done, what has begun, and what shall stand at a time. */
import type { Instant } from "../../calc/schedule/calendar.ts";

export interface Begun {
  readonly station: string;
  /** undefined: nobody wrote when. */
  readonly at: Instant | undefined;
}

export interface Pin {
  readonly station: string;
  readonly at: Instant;
}

export interface Marks {
  /** All of it. */
  readonly isDone: boolean;
  /** Names of stations, as they are written. */
  readonly done: readonly string[];
  readonly started: readonly Begun[];
  readonly pins: readonly Pin[];
}
export const NO_MARKS: Marks = { isDone: false, done: [], started: [], pins: [] };
