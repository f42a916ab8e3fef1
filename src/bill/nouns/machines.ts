/** Machines and tools as they stand in the shop's tables. What a table leaves out is asked for when it is needed. */
import type { Punch as BendPunch, Brake as RatedBrake, Die as VDie } from "../../calc/bend/tooling.ts";
import type { Limits } from "../../calc/cutting/types.ts";
import type { JetCut } from "../../calc/jet/feed.ts";
import type { Shear as RatedShear } from "../../calc/shear/check.ts";
import type { BrakeMotion } from "../../calc/time/brake-time.ts";
import type { Seconds } from "../../calc/time/seconds.ts";
import type { ShearPace } from "../../calc/time/shear-time.ts";
import type { Millimeters, MillimetersPerMinute } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";

/** Who read a row from the machine's or tool's own plate, and when; "" where nobody has yet. */
interface FromThePlate {
  readonly plate: string;
}

export interface Brake extends RatedBrake, FromThePlate {
  readonly motion: Partial<BrakeMotion>;
}
export interface Die extends VDie, FromThePlate {}
export interface Punch extends BendPunch, FromThePlate {}

export interface Shear extends RatedShear, FromThePlate {
  readonly pace: Partial<ShearPace>;
  readonly limits: Limits;
  /** Taken off one long and one short edge of a sheet before anything is measured from them. */
  readonly trim: Millimeters;
}

export interface Waterjet extends FromThePlate {
  readonly name: string;
  readonly cut: Omit<JetCut, "machinability" | "thickness">;
  readonly highestFeed: MillimetersPerMinute;
  readonly pierceTime: Seconds;
  /** The shop's timed cut over the formula; undefined: not timed, so the formula stands with its +-25 %. */
  readonly speedFactor: number | undefined;
  readonly bedLength: Millimeters | undefined;
  readonly bedWidth: Millimeters | undefined;
}

/** The columns of machines that only times need, by their headers. */
export const MOTION = {
  openStroke: "Open stroke",
  approachSpeed: "Approach speed",
  bendSpeed: "Bend speed",
  returnSpeed: "Return speed",
  gaugeSpeed: "Gauge speed",
} as const;
export const PACE = { strokesPerMinute: "Strokes per minute", cutsPerBlank: "Cuts per blank" } as const;

/** What a table may leave out until a time is asked for. */
export function complete<T extends object>(
  given: Partial<T>,
  columns: Readonly<Record<keyof T, string>>,
  table: string,
  name: string,
): T {
  for (const [key, column] of Object.entries<string>(columns))
    if (given[key as keyof T] === undefined)
      throw noAnswer(table, `a table with a column "${column}" and a figure for ${name}`, "none");
  return given as T;
}
