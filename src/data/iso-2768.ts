/**
 * ISO 2768-1 general tolerances. Lengths: f, m, v, and c above 6 mm, read in a reprint; c up to 6 mm from memory, since
 * that reprint prints the 0.15 and 0.2 mm of DIN 7168 there. Angles: f and m read in a reprint, c and v memory. Another's
 * program carries all of both tables as they stand here.
 */
export const TOLERANCE_CLASSES = ["f", "m", "c", "v"] as const;
export type ToleranceClass = (typeof TOLERANCE_CLASSES)[number];

export const LINEAR_SOURCE = "ISO 2768-1 Table 1 (read in a reprint; class c up to 6 mm memory)";
export const ANGULAR_SOURCE = "ISO 2768-1 Table 3 (classes f and m read in a reprint; c, v memory)";

/** The table begins at 0.5 mm: below it the drawing must say the tolerance itself. */
export const LINEAR_FROM_MM = 0.5;

/**
 * [over the row before, up to and including mm, plus-minus mm per class]; null where the standard gives none.
 * Read in a reprint; class c up to 6 mm memory.
 */
export const LINEAR: readonly { upTo: number; f: number | null; m: number; c: number; v: number | null }[] = [
  { upTo: 3, f: 0.05, m: 0.1, c: 0.2, v: null },
  { upTo: 6, f: 0.05, m: 0.1, c: 0.3, v: 0.5 },
  { upTo: 30, f: 0.1, m: 0.2, c: 0.5, v: 1 },
  { upTo: 120, f: 0.15, m: 0.3, c: 0.8, v: 1.5 },
  { upTo: 400, f: 0.2, m: 0.5, c: 1.2, v: 2.5 },
  { upTo: 1000, f: 0.3, m: 0.8, c: 2, v: 4 },
  { upTo: 2000, f: 0.5, m: 1.2, c: 3, v: 6 },
  { upTo: 4000, f: null, m: 2, c: 4, v: 8 },
];

/**
 * By the shorter leg in mm: plus-minus minutes of arc. The last row has no upper end.
 * Classes f and m read in a reprint; c and v memory.
 */
export const ANGULAR: readonly { upTo: number; f: number; m: number; c: number; v: number }[] = [
  { upTo: 10, f: 60, m: 60, c: 90, v: 180 },
  { upTo: 50, f: 30, m: 30, c: 60, v: 120 },
  { upTo: 120, f: 20, m: 20, c: 30, v: 60 },
  { upTo: 400, f: 10, m: 10, c: 15, v: 30 },
  { upTo: Number.POSITIVE_INFINITY, f: 5, m: 5, c: 10, v: 20 },
];
