import { missing } from "../../units/certain.ts";

/** Numerical: what counts as nothing, the least pivot, and pivots after which the inverse is worked out anew. */
export const NOTHING = 1e-9;
export const LEAST_PIVOT = 1e-7;
export const FRESH_AFTER = 500;
/**
 * How far what the rows want is shifted, each by another amount, so that hardly a step brings nothing (equal wishes make many
 * such steps; perturbation: Charnes, Econometrica 20:160, 1952; memory, unverified), and what is more than that: chosen.
 */
export const SHIFT = 1e-5;
export const USED = 1e-3;
/** Steps without progress before the first eligible column is taken instead of the best (Bland's rule, against circles). */
export const PATIENCE = 60;
/** Pivots a row after which a run ends, whatever it may be caught in: chosen. */
export const MOST_PIVOTS = 20;
/** Columns looked at again before all are. */
export const SHORT_LIST = 20;

/** The row that is the first to get nothing when a column of that direction comes in; -1 where none ever does. */
export function leavingRow(direction: Float64Array, amounts: Float64Array): number {
  let leaving = -1;
  let step = Infinity;
  for (let r = 0; r < direction.length; r++) {
    if ((direction[r] ?? missing()) <= LEAST_PIVOT) continue;
    const most = Math.max(0, amounts[r] ?? missing()) / (direction[r] ?? missing());
    if (
      most < step - NOTHING ||
      (most < step + NOTHING && (direction[r] ?? missing()) > (direction[leaving] ?? missing()))
    ) {
      step = Math.min(step, most);
      leaving = r;
    }
  }
  return leaving;
}

/** The same numbers with twice the room. */
export function doubled<T extends Int32Array | Float64Array>(old: T, larger: T): T {
  larger.set(old as Int32Array & Float64Array);
  return larger;
}
