/**
 * Piece values for the next plan: pieces that came out on badly filled sheets are worth more than their area, so that
 * they are placed while there is still choice (sequential value correction: Mukhacheva and others; memory, unverified).
 */

import { itemAt, missing } from "../../units/certain.ts";
import type { Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";

/** Blend of old and new weight, how far large pieces are favored, and the largest weight: tuned on generated bills. */
const LEAST_BLEND = 0.3;
const BLEND_RANGE = 0.4;
const POWER_RANGE = 0.08;
const MOST_WEIGHT = 3;

/** Updates `weights` from the last plan and returns the values they give. */
export function correctedValues(
  problem: Problem,
  plan: readonly Use[],
  weights: Float64Array,
  random: Random,
): Float64Array<ArrayBuffer> {
  const { items, sheets } = problem;
  const seen = new Float64Array(items.length);
  const sum = new Float64Array(items.length);
  for (const { pattern, repeats } of plan) {
    const sheet = itemAt(sheets, pattern.sheet);
    let filled = 0;
    for (let k = 0; k < pattern.items.length; k++) {
      const { w, h } = itemAt(items, itemAt(pattern.items, k));
      filled += itemAt(pattern.counts, k) * w * h;
    }
    for (let k = 0; k < pattern.items.length; k++) {
      const pieces = repeats * itemAt(pattern.counts, k);
      const item = itemAt(pattern.items, k);
      seen[item] = (seen[item] ?? missing()) + pieces;
      sum[item] = (sum[item] ?? missing()) + (pieces * sheet.w * sheet.h) / filled;
    }
  }
  const blend = LEAST_BLEND + BLEND_RANGE * random.unit();
  const power = 1 + POWER_RANGE * random.unit();
  return Float64Array.from(items, ({ value }, i) => {
    if (itemAt(seen, i) > 0)
      weights[i] = (1 - blend) * itemAt(weights, i) + blend * Math.min(MOST_WEIGHT, itemAt(sum, i) / itemAt(seen, i));
    return value ** power * itemAt(weights, i);
  });
}
