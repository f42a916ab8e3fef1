/** Times inside the project are seconds; a run is whole seconds, rounded up, so that the same work is never shorter twice. */
import type { Quantity } from "../../units/quantity.ts";

export type Seconds = Quantity<"s">;
export const seconds = (value: number) => value as Seconds;

export const SECONDS_PER_MINUTE = 60; // by definition
export const SECONDS_PER_HOUR = 3600; // by definition

const LAST_BITS = 1e-6; // chosen: far below a second, far above rounding
/** The time of n pieces, in whole seconds, rounded up. */
export const runTime = (pieces: number, each: Seconds): Seconds =>
  seconds(Math.max(0, Math.ceil(pieces * each - LAST_BITS)));
