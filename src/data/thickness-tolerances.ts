/** How much thicker than ordered plate and sheet may come, as absolute figures. */
import { fact } from "./fact.ts";

const A6 = "ASTM A6/A6M thickness table, plate to 96 in wide, reprints in inches and in mm";
const LIMITS = "service center's upper ordering limits by gauge, reprint";

/** From 3/16 to 3/4 in. Note 4 of the table lets it be 1.75 times as much away from the edge. */
export const A6_OVER = fact(0.03, "in", "read", A6);
export const A6_OVER_INSIDE = fact(1.75, "", "read", "ASTM A6/A6M, note 4 of the thickness table, reprint");
/** Thicker plate: the share that 0.03 in is of 3/4 in. */
export const A6_OVER_THICK = fact(0.04, "", "memory", "thicker plate runs over by about as large a share");

/** Up to each thickness: so much over. The thinnest row and the use for other metals than carbon steel are memory. */
export const SHEET_OVERS = [
  { upTo: 0.0597, over: fact(0.004, "in", "memory", "thin sheet, usual ordering limits") },
  { upTo: 0.0896, over: fact(0.005, "in", "read", `${LIMITS}: 16 ga 0.0648, 14 ga 0.0797`) },
  { upTo: 0.1494, over: fact(0.006, "in", "read", `${LIMITS}: 11 ga 0.1256, 10 ga 0.1405`) },
  { upTo: Number.POSITIVE_INFINITY, over: fact(0.007, "in", "read", `${LIMITS}: 7 ga 0.1863`) },
] as const;
