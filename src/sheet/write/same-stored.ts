import { CellError, type CellValue } from "../../units/cell.ts";

/**
 * Whether a computed value is the one the file already holds, so that the cell can stay untouched. Numbers agree to
 * `tolerance`, relative: two programs that add in another order differ in the last bits.
 */
export function sameStored(stored: CellValue | undefined, now: CellValue | undefined, tolerance: number): boolean {
  if (typeof stored === "number" && typeof now === "number") {
    return stored === now || Math.abs(stored - now) <= tolerance * Math.max(Math.abs(stored), Math.abs(now));
  }
  if (stored instanceof CellError && now instanceof CellError) return stored.code === now.code;
  return stored === now;
}

/** Below the 15 digits Excel shows: such a difference is no change worth writing. */
export const WRITE_TOLERANCE = 1e-14;
/** What "equal" means when values are verified. */
export const VERIFY_TOLERANCE = 1e-9;
