/** What a list of cuts takes at the shear: settings, lifts, turns, strokes and marks, at the shop's own pace. */
import type { Cut, FloorPace } from "./types.ts";

/** Common practice, 2026: a powered gauge, a light table, one person; the shop's own rates take its place. 50 lb = 22.7 kg. */
export const DEFAULT_PACE: FloorPace = {
  setting: 15,
  liftPerKilogram: 0.5,
  turn: 5,
  stroke: 7,
  mark: 40,
  heavy: 22.68,
};

const SECONDS_PER_MINUTE = 60; // by definition

/** So many times its seconds a setting counts where orders and plans are compared: one set wrong spoils every piece (chosen). */
export const SETTING_COUNTS = 2;

/** Minutes, with what settings count beside their time. */
export const minutesCounted = (time: Pick<FloorTime, "minutes" | "settings">, pace: FloorPace): number =>
  time.minutes + (time.settings * pace.setting * (SETTING_COUNTS - 1)) / SECONDS_PER_MINUTE;

/** Where back gauge and front stop stand. */
export type Stands = { readonly gauge: number; readonly "front stop": number };
export const NOWHERE: Stands = { gauge: Number.NaN, "front stop": Number.NaN };

export interface FloorTime {
  readonly minutes: number;
  readonly settings: number;
  readonly heavyLifts: number;
  /** After the last cut. */
  readonly stands: Stands;
}

export function floorTime(
  cuts: readonly Cut[],
  weightPerArea: number,
  pace: FloorPace,
  before: Stands = NOWHERE,
): FloorTime {
  let seconds = 0;
  let settings = 0;
  let heavyLifts = 0;
  const stands = { ...before };
  let visit = 0;
  let onTable = "";
  /** Settings of the present visit, of which every copy but the first needs all but one. */
  let inVisit = new Set<string>();
  for (const cut of cuts) {
    const { copies, stays } = cut;
    if (cut.visit !== visit) {
      visit = cut.visit;
      inVisit = new Set();
      if (!(cut.piece === onTable && copies === 1)) {
        const weight = areaOf(cut) * weightPerArea;
        seconds += copies * weight * pace.liftPerKilogram;
        if (weight > pace.heavy) heavyLifts += copies;
      }
    }
    if (cut.by === "mark") seconds += copies * cut.falls.length * pace.mark;
    else {
      const key = `${cut.by} ${cut.measure}`;
      const again = inVisit.size > 0 && !inVisit.has(key) ? copies - 1 : 0;
      const moved = (cut.measure === stands[cut.by] ? 0 : 1) + again;
      inVisit.add(key);
      stands[cut.by] = cut.measure;
      settings += moved;
      seconds += moved * pace.setting;
    }
    if (cut.turn) seconds += copies * pace.turn;
    seconds += cut.strokes * pace.stroke;
    onTable = stays.id;
    if (cut.by !== "front stop" || stays.kind !== "part") continue;
    // What lay against the front stop is the part; the rest fell behind the blade and is laid on the table again.
    const weight = stays.w * stays.h * weightPerArea;
    seconds += cut.strokes * weight * pace.liftPerKilogram;
    if (weight > pace.heavy) heavyLifts += cut.strokes;
  }
  return { minutes: seconds / SECONDS_PER_MINUTE, settings, heavyLifts, stands };
}

/** The piece on the table before the cut. */
export const areaOf = ({ falls, stays, axis }: Cut): number => {
  const across = axis === "w" ? stays.h : stays.w;
  const along: number = axis === "w" ? stays.w : stays.h;
  return across * falls.reduce((sum, fall) => sum + (axis === "w" ? fall.w : fall.h), along);
};
