/** Sheet gauges: by statute and formula, not by table, so that every gauge of a series can be checked. */
import { fact } from "./fact.ts";

const STATUTE = "15 U.S.C. 206, US Standard Gauge";

/**
 * Statutory weight in ounces per square foot, by runs of gauges: [first gauge, its ounces, ounces less per gauge].
 * Gauge 0 is "1/0"; 7/0 is -6. Each run rules until the next begins. 15 U.S.C. 206 (read).
 */
export const STATUTORY_OUNCES: readonly (readonly [gauge: number, ounces: number, less: number])[] = [
  [-6, 320, 20],
  [0, 200, 10],
  [1, 180, 10],
  [14, 50, 5],
  [16, 40, 4],
  [20, 24, 2],
  [26, 12, 1],
  [31, 7, 0.5],
  [36, 4.5, 0.25],
];
export const STATUTORY_RANGE = { first: -6, last: 38, source: `${STATUTE} (read)` } as const;

/** The statute: 640 ounces per square foot and inch (wrought iron at 480 lb/ft^3). */
export const STATUTE_OUNCES_PER_INCH = fact(640, "oz/ft2/in", "read", STATUTE);
/** Manufacturers' Standard Gauge: 41.82 lb per square foot and inch. */
export const STEEL_POUNDS_PER_INCH = fact(
  41.82,
  "lb/ft2/in",
  "read",
  "Manufacturers' Standard Gauge, GNU units stdgauge",
);
/** Zinc and iron-zinc layer of galvanized sheet, added to the statutory ounces. */
export const GALVANIZED_COATING_OUNCES = fact(2.5, "oz/ft2", "read", "published galvanized sheet gauge table");
/** Stainless lists print the statute's thickness to 4 places. */
export const STAINLESS_DECIMALS = fact(4, "", "read", "published stainless tables after 15 U.S.C. 206");

/** Brown & Sharpe: 36 gauge is 0.005 in, 4/0 is 0.46 in, a ratio of 92 in 39 steps. */
export const AWG_BASE = fact(0.005, "in", "read", "ASTM B258");
export const AWG_RATIO = fact(92, "", "read", "ASTM B258");
export const AWG_STEPS = fact(39, "", "read", "ASTM B258");
export const AWG_BASE_GAUGE = fact(36, "", "read", "ASTM B258");
/** 4/0 to 40: the sizes that ASTM B258 lists (read). */
export const AWG_RANGE = { first: -3, last: 40 } as const;

/** The published steel and galvanized tables begin at 3 and 8 gauge; thicker stock is plate, ordered in inches (read). */
export const STEEL_RANGE = { first: 3, last: 38 } as const;
/** As published (read). */
export const GALVANIZED_RANGE = { first: 8, last: 32 } as const;
