import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import type { Station } from "../nouns/station.ts";

/** What one line has to do at one station: set-up, time of a piece, whole seconds of the run, people. */
export interface StationWork {
  readonly station: Station;
  readonly setUp: Seconds;
  /** One piece. */
  readonly each: Seconds;
  readonly pieces: number;
  /** All pieces, whole seconds. */
  readonly run: Seconds;
  readonly people: number;
  readonly note: string;
}

/** Work that a vendor does: so many units of the station's basis on each piece. */
export interface OutsideWork {
  readonly station: Station;
  readonly units: number;
}

export const stationWork = (given: Omit<StationWork, "run" | "setUp"> & { readonly setUp: number }): StationWork => ({
  ...given,
  setUp: seconds(Math.ceil(given.setUp)),
  run: runTime(given.pieces, given.each),
});

export const timeOf = ({ setUp, run }: Pick<StationWork, "setUp" | "run">): Seconds => seconds(setUp + run);
