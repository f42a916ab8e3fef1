/** Constants of the abrasive-waterjet speed formula, SI form (MPa, mm, g/min -> mm/min). */
import { fact } from "./fact.ts";

const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993, pp. 175-189";

export const JET_CONSTANT_SI = fact(788, "", "memory", ZENG_KIM);
export const PRESSURE_EXPONENT = fact(1.594, "", "memory", ZENG_KIM);
export const ORIFICE_EXPONENT = fact(1.374, "", "memory", ZENG_KIM);
export const ABRASIVE_EXPONENT = fact(0.343, "", "memory", ZENG_KIM);
export const NOZZLE_EXPONENT = fact(0.618, "", "memory", ZENG_KIM);
export const SPEED_EXPONENT = fact(1.15, "", "memory", ZENG_KIM);
/** What the numbers stand for, in our words; the numbers are the paper's. */
export const QUALITY_WORDS = [
  "rough cut",
  "clean through-cut",
  "medium finish",
  "smooth finish",
  "fine finish",
] as const;
/** A timed cut speaks for sheet from half to double its thickness. */
export const TIMED_HOLDS = fact(2, "", "common practice", "chosen: a cut says little about sheet twice as thick");
/** Below this thickness the formula outruns what is published. */
export const THIN_MM = fact(
  3,
  "mm",
  "derived",
  "at 1.6 mm the formula gives 26 to 162 in/min, a published speed about 20",
);
export const THIN_PUBLISHED = fact(
  20,
  "in/min",
  "read",
  "Process Fundamentals of Industrial Laser Welding and Cutting, p. 117: abrasive waterjet in 1.6 mm mild steel, an excerpt",
);
export const QUALITY = { from: 1, to: 5, source: `${ZENG_KIM} (memory)` } as const;
