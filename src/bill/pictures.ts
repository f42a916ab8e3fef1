/** What pictures and papers of a bill need of its geometry. A view works nothing out, so it is offered what the plan uses. */
export { type BentPart, bendLines, checkPart, flatOfPart } from "../calc/bend/order/part.ts";
export { poseAtHit } from "../calc/bend/order/pose.ts";
export type { Press } from "../calc/bend/order/press.ts";
export type { Outline } from "../calc/bend/order/solid.ts";
export type { Datum, Hit } from "../calc/bend/order/stops.ts";
export { obstacleInWords } from "../calc/bend/order/watch.ts";
export type { CutListRow } from "../calc/cutting/cut-list.ts";
export type { JetSheet } from "../calc/cutting/jet-sheets.ts";
export type { Cut, PieceOut, PlannedPattern } from "../calc/cutting/types.ts";
export type { Subject } from "../calc/finding.ts";
export type { Instant } from "../calc/schedule/calendar.ts";
