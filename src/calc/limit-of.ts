/** What a finding is held against: common practice, or the shop's own figure where its rates table states one. */
import type { Threshold } from "../data/thresholds.ts";
import { toInternal } from "../units/system.ts";

/** By the name of the row, in internal units. */
export type OwnThresholds = ReadonlyMap<string, number>;
export const COMMON_PRACTICE: OwnThresholds = new Map();

const KINDS = { in: "length", lb: "mass", deg: "angle" } as const;
type ThresholdKind = (typeof KINDS)[keyof typeof KINDS];

/** What kind of quantity it is; undefined for a share and for a multiple. */
export const kindOf = ({ unit }: Threshold): ThresholdKind | undefined => KINDS[unit as keyof typeof KINDS];

/** In internal units: mm, kg, degrees; a bare number where it has no unit. */
export const limitOf = (threshold: Threshold, own: OwnThresholds = COMMON_PRACTICE): number =>
  own.get(threshold.row) ?? inInternal(threshold, threshold.value);

/** A figure in the threshold's own unit -> the internal one. */
export function inInternal(threshold: Threshold, value: number): number {
  const kind = kindOf(threshold);
  return kind === undefined ? value : toInternal(value, kind, "in");
}
