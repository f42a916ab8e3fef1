import * as thresholds from "./thresholds.ts";

/** Every threshold that a row of the rates table may change. */
export const THRESHOLDS: readonly thresholds.Threshold[] = Object.values(thresholds).filter((one) => "row" in one);
