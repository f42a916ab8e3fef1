/** The cut plan: what other folders use of it. */
import { mm } from "../../units/quantity.ts";
import type { Limits } from "./types.ts";

export { type CutListRow, cutList } from "./cut-list.ts";
export { DEFAULT_PACE } from "./floor-time.ts";
export { type JetLimits, type JetPlan, type JetSheet, planJetSheets } from "./jet-sheets.ts";
export { DEFAULT_UNITS, planCuts } from "./plan-cuts.ts";
export { replay } from "./replay.ts";
export type * from "./types.ts";

/** A shear without limits, three stages, every left-over scrap. */
export const NO_LIMITS: Limits = {
  longestCut: mm(Infinity),
  reach: mm(Infinity),
  nearestGauge: mm(0),
  leastDrop: mm(0),
  leastHold: mm(0),
  stages: 3,
  leastRemnant: mm(0),
  remnantWorth: 0,
};
