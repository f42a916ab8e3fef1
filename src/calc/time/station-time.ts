import type { Kilograms, Millimeters } from "../../units/quantity.ts";
import { KG_PER_POUND, MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type Seconds, seconds } from "./seconds.ts";

/** What a station's time and price count: the machine's own formula, or so much a piece, a hole, a square foot ... */
export const BASES = ["machine", "piece", "count", "hole", "notch", "ft2", "m2", "ft", "m", "lb", "kg"] as const;
export type Basis = (typeof BASES)[number];

/** What one piece of a line has of each. */
export interface Measures {
  readonly holes: number;
  readonly notches: number;
  /** Both faces, mm2. */
  readonly area: number;
  /** Outline of the blank. */
  readonly edge: Millimeters;
  readonly weight: Kilograms;
}

const MM_PER_METRE = 1000; // by definition
const MM_PER_FOOT = 12 * MM_PER_INCH; // by definition

/**
 * How many units of its basis one piece has at a station. An amount written with the operation ("tap 3", "weld 1.5")
 * comes before what the drawing says; for "count" it is needed, and undefined is answered without it.
 */
export function measure(basis: Basis, piece: Measures, amount: number | undefined): number | undefined {
  if (amount !== undefined) return amount;
  switch (basis) {
    case "count":
      return undefined;
    case "machine":
    case "piece":
      return 1;
    case "hole":
      return piece.holes;
    case "notch":
      return piece.notches;
    case "ft2":
      return piece.area / MM_PER_FOOT ** 2;
    case "m2":
      return piece.area / MM_PER_METRE ** 2;
    case "ft":
      return piece.edge / MM_PER_FOOT;
    case "m":
      return piece.edge / MM_PER_METRE;
    case "lb":
      return piece.weight / KG_PER_POUND;
    case "kg":
      return piece.weight;
  }
}

/** Time of one piece at a station that is not a machine: units x time each. The time is the workbook's. */
export const stationTime = (station: string, units: number, each: Seconds, work?: Working): Seconds =>
  step(work, `T ${station}`, `${station}, one piece`, seconds(units * each), "s", "units x time each (derived)");
