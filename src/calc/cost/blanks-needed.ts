import type { Ratio } from "../../units/quantity.ts";

const LAST_BITS = 1e-9; // numerical: 2 % of 25 is a half, whatever binary fractions make of it

/** Blanks to cut: what is ordered, scrap once it comes to half a piece, and the first pieces of the set-up. */
export const blanksNeeded = (ordered: number, scrapAllowance: Ratio, firstPieces: number): number =>
  ordered + Math.floor(ordered * scrapAllowance + 0.5 + LAST_BITS) + firstPieces;

/**
 * What a line pays of its blanks' metal and time: scrap is a share of the cost, whatever it adds in whole pieces, so that
 * one piece more never costs a spare as well (common practice).
 */
export const chargedShare = (ordered: number, scrapAllowance: Ratio, firstPieces: number): Ratio =>
  (ordered * (1 + scrapAllowance) + firstPieces) / blanksNeeded(ordered, scrapAllowance, firstPieces);
