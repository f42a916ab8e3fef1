/** Edition 2026.2, stainless steels. */

import {
  GROOVER_CLEARANCE,
  ksi,
  MILL,
  PRESSURE_TABLE,
  plannedHigh,
  poundsPerCubicInch,
  ratio,
  SHOP_RULE,
  ZENG_KIM,
} from "./figures.ts";
import type { Material } from "./material.ts";

const A240 = "ASTM A240 Table 2";
const A213 = "ASTM A213 minimum properties, reprint";
const PRODUCER = "producer's data sheet, high-temperature properties of 304 and 316, at 24 C";

// The exponent that yield and tensile give (0.24 for 304) stops short of its large uniform strain, and the textbook's of
// annealed 304 (0.45, Kalpakjian & Schmid, read) holds only at large strains and bends to 0.28 of the opening.
const hardening = {
  hardeningExponent: ratio(
    0.28,
    "fitted",
    "fitted to the 0.21 of an opening of 8 t that shops find (common practice, 0.20-0.22); 0.24 from typical yield and tensile, 0.45 of textbooks at large strains",
  ),
};

const stainless = {
  gaugeSeries: "stainless",
  density: poundsPerCubicInch(0.29, "memory", "AISI stainless data"),
  modulus: ksi(28000, "memory", "AISI stainless data"),
  poisson: ratio(0.28, "read", PRODUCER),
  ratingCovers: ksi(75, "memory", `${PRESSURE_TABLE}: stainless`),
  thicknessOver: "sheet",
  knifeGap: ratio(0.06, "read", `${GROOVER_CLEARANCE}, soft stainless`),
  airRadiusLow: ratio(0.2, "memory", SHOP_RULE),
  airRadiusHigh: ratio(0.22, "memory", SHOP_RULE),
  usualRadius: ratio(1, "memory", "usual on a brake for annealed 300-series"),
  ...hardening,
} as const;

export const STAINLESS_STEELS: readonly Material[] = [
  {
    name: "304",
    aliases: ["304 stainless", "SS304", "AISI 304", "304 SS", "S30400", "1.4301", "A240 304"],
    yieldMinimum: ksi(30, "read", A213),
    yieldTypical: ksi(39, "read", PRODUCER),
    tensileMinimum: ksi(75, "read", A213),
    tensileTypical: ksi(87, "read", PRODUCER),
    ...plannedHigh(ksi(107, "memory", MILL)),
    ...stainless,
    machinability: ratio(82, "memory", ZENG_KIM),
  },
  {
    name: "316",
    aliases: ["316 stainless", "SS316", "AISI 316", "316 SS", "S31600", "1.4401", "A240 316"],
    yieldMinimum: ksi(30, "memory", A240),
    yieldTypical: ksi(40, "read", PRODUCER),
    tensileMinimum: ksi(75, "memory", A240),
    tensileTypical: ksi(84, "read", PRODUCER),
    ...plannedHigh(ksi(105, "memory", MILL)),
    ...stainless,
    machinability: ratio(82, "memory", `${ZENG_KIM}, 304, taken for 316 too`),
  },
  {
    name: "316L",
    aliases: ["316L stainless", "SS316L", "AISI 316L", "316L SS", "S31603", "1.4404", "A240 316L"],
    yieldMinimum: ksi(25, "memory", A240),
    yieldTypical: ksi(38, "memory", MILL),
    tensileMinimum: ksi(70, "memory", A240),
    tensileTypical: ksi(82, "memory", MILL),
    ...plannedHigh(ksi(100, "memory", MILL)),
    ...stainless,
    machinability: ratio(82, "memory", `${ZENG_KIM}, 304, taken for 316L too`),
  },
];
