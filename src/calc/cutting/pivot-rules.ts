/** Numerical: what counts as nothing, the least pivot, and pivots after which the inverse is worked out anew. */
export const NOTHING = 1e-9;
export const LEAST_PIVOT = 1e-7;
export const FRESH_AFTER = 500;
/** Steps without progress before the first eligible column is taken instead of the best (Bland's rule, against circles). */
export const PATIENCE = 60;
/** Pivots a row after which a run ends, whatever it may be caught in: chosen. */
export const MOST_PIVOTS = 20;
/** Columns looked at again before all are. */
export const SHORT_LIST = 20;

/** The same numbers with twice the room. */
export function doubled<T extends Int32Array | Float64Array>(old: T, larger: T): T {
  larger.set(old as Int32Array & Float64Array);
  return larger;
}
