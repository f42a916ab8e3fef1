import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import type { Ratio } from "../../units/quantity.ts";
import type { Station } from "../nouns/station.ts";
import type { Pace } from "./pace.ts";

/** What one line has to do at one station: set-up, time of a piece, whole seconds of the run, people. */
export interface StationWork {
  readonly station: Station;
  /** Which of the shop's machines does it; "" at a bench. */
  readonly machine: string;
  readonly setUp: Seconds;
  /** Part of the set-up that is its share of a change, of tools or of the shear's gap, and the whole change that is shared. */
  readonly share: Seconds;
  readonly change: Seconds;
  /** One piece. */
  readonly each: Seconds;
  readonly pieces: number;
  /** All pieces, whole seconds. */
  readonly run: Seconds;
  readonly people: number;
  /** The shop's own factor that both times hold; 1 where finished jobs have taught none. */
  readonly own: Ratio;
  readonly note: string;
}

/** Work that a vendor does: so many units of the station's basis on each piece. */
export interface OutsideWork {
  readonly station: Station;
  readonly units: number;
}

type Given = Omit<StationWork, "run" | "setUp" | "share" | "change" | "own"> & {
  readonly setUp: number;
  readonly share?: number;
  readonly change?: number;
  readonly pace: Pace;
};

/** Whole seconds, rounded up as those of a run. */
const whole = (time: number): Seconds => runTime(1, seconds(time));

/** @param given times as estimated: the pace of the shop comes on top. */
export function stationWork({ pace, share = 0, change = 0, ...given }: Given): StationWork {
  const each = seconds(given.each * pace.total);
  return {
    ...given,
    each,
    setUp: whole(given.setUp * pace.total),
    share: whole(share * pace.total),
    change: seconds(Math.round(change * pace.total)),
    run: runTime(given.pieces, each),
    own: pace.own,
  };
}

export const timeOf = ({ setUp, run }: Pick<StationWork, "setUp" | "run">): Seconds => seconds(setUp + run);
