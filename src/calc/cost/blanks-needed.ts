import type { Ratio } from "../../units/quantity.ts";

const LAST_BITS = 1e-9; // numerical: 2 % of 50 is 1, whatever binary fractions make of it

/** Blanks to cut: what is ordered, the scrap allowance rounded up to whole blanks, and the first pieces of the set-up. */
export const blanksNeeded = (ordered: number, scrapAllowance: Ratio, firstPieces: number): number =>
  ordered + Math.ceil(ordered * scrapAllowance - LAST_BITS) + firstPieces;
