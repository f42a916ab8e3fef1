import { step, type Working } from "../../units/working.ts";
import { SECONDS_PER_MINUTE, type Seconds, seconds } from "./seconds.ts";

/** The shear's pace. The workbook's figures. */
export interface ShearPace {
  readonly strokesPerMinute: number;
  /** Strokes that one blank costs, its share of trims and strips included. */
  readonly cutsPerBlank: number;
}

/** Shear time of one blank: its cuts, each a stroke and a handling (derived). */
export const shearTime = (pace: ShearPace, handling: Seconds, work?: Working): Seconds =>
  step(
    work,
    "T shear",
    "shear, one blank",
    seconds(pace.cutsPerBlank * (SECONDS_PER_MINUTE / pace.strokesPerMinute + handling)),
    "s",
    "cuts x (stroke + handling) (derived)",
  );
