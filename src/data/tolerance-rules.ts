/** How the scatter of a shop adds up in a bent dimension. */
import { fact } from "./fact.ts";

/**
 * Share of a deduction's variance that all bends of one sheet have in common, since they share its thickness and temper;
 * the rest is each bend's own.
 */
export const COMMON_SHARE = fact(
  0.6,
  "",
  "derived",
  "squares of AIR.BEND's band that thickness and temper make: 0.64 in A36 1/4 in over 2 in, 0.55 in 5052-H32 1/8 in over 1 in",
);
