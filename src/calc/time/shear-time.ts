import { step, type Working } from "../../units/working.ts";
import { SECONDS_PER_MINUTE, type Seconds, seconds } from "./seconds.ts";

/** The shear's pace. The workbook's figures. */
export interface ShearPace {
  readonly strokesPerMinute: number;
  /** Strokes that one blank costs, its share of trims and strips included. */
  readonly cutsPerBlank: number;
}

/**
 * Shear time of one blank: its cuts, each a stroke and a handling, and its share of laying the sheet on the table
 * (derived).
 */
export const shearTime = (pace: ShearPace, handling: Seconds, loading: Seconds, work?: Working): Seconds =>
  step(
    work,
    "T shear",
    "shear, one blank",
    seconds(pace.cutsPerBlank * (SECONDS_PER_MINUTE / pace.strokesPerMinute + handling) + loading),
    "s",
    "cuts x (stroke + handling) + share of the sheet's loading (derived)",
  );
