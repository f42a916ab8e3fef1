/** Edition 2026.2, carbon steels. */

import {
  GROOVER,
  GROOVER_CLEARANCE,
  ksi,
  MILL,
  plannedHigh,
  poundsPerCubicInch,
  ratio,
  SHEAR_TABLES,
  SHOP_RULE,
  ZENG_KIM,
} from "./figures.ts";
import type { Material } from "./material.ts";

const A36_MILL = "ASTM A36-14 as in a mill's table of American grades, reprint";
const A572_MILL = "ASTM A572-15 as in a mill's table of American grades, reprint";
const MEASURED =
  "fitted to published measured bends of cold-rolled steel (Prototek Fabrication, deductions tested in its own shop)";

const steel = {
  density: poundsPerCubicInch(0.284, "read", GROOVER),
  modulus: ksi(30000, "read", GROOVER),
  poisson: ratio(0.3, "memory", "textbook value for steel"),
  machinability: ratio(87.6, "memory", ZENG_KIM),
  airRadiusLow: ratio(5 / 32, "memory", SHOP_RULE),
  airRadiusHigh: ratio(0.16, "memory", SHOP_RULE),
  usualRadius: ratio(
    0.8,
    "memory",
    "soft steel in the usual die; Prototek's tested bends of 3/16 over 1-1/2 have 0.84",
  ),
} as const;

/** Guillotines are rated in mild steel of at most 50 ksi in shear: the rating covers the strongest such sheet. */
const mildSteelRating = { ratingCovers: ksi(50, "read", `${SHEAR_TABLES}: mild steel is at most 50 ksi in shear`) };

const hotRolledGap = ratio(0.065, "memory", "middle of 5-8 % of the thickness, hot-rolled plate on a guillotine");
const softSteelGap = ratio(0.06, "read", GROOVER_CLEARANCE);
const coatedSteelGap = ratio(
  0.06,
  "memory",
  `${GROOVER_CLEARANCE}, soft cold-rolled steel, taken for coated sheet too`,
);

/** The exponent alone: the strength goes with the sheet's own tensile strength, K = UTS (e/n)^n. */
const hotRolledSheet = {
  hardeningExponent: ratio(
    0.12,
    "fitted",
    `${MEASURED}; tensile tests of hot-rolled strip 0.10 (University of Liverpool, Steelmatter, read)`,
  ),
};
const coldRolledSheet = {
  hardeningExponent: ratio(
    0.12,
    "fitted",
    `${MEASURED}; tensile tests of cold-reduced strip 0.20-0.25 (University of Liverpool, Steelmatter, read)`,
  ),
};

export const STEELS: readonly Material[] = [
  {
    name: "A36",
    aliases: ["ASTM A36", "A36 plate", "A36 steel", "SA36"],
    gaugeSeries: "steel",
    yieldMinimum: ksi(36, "read", A36_MILL),
    yieldTypical: ksi(42, "memory", MILL),
    tensileMinimum: ksi(58, "read", A36_MILL),
    tensileTypical: ksi(65, "memory", MILL),
    tensileHigh: ksi(80, "read", A36_MILL),
    tensileHighIs: "specification maximum",
    ...steel,
    ...mildSteelRating,
    thicknessOver: "ASTM A6",
    knifeGap: hotRolledGap,
    radiusRule: { table: "ASTM A6", multiple: 1.5, mark: "read" },
  },
  {
    name: "A572-50",
    aliases: ["A572 Gr 50", "A572 Grade 50", "A572 50", "ASTM A572 Gr 50", "ASTM A572 Grade 50"],
    gaugeSeries: "steel",
    yieldMinimum: ksi(50, "read", A572_MILL),
    yieldTypical: ksi(56, "memory", MILL),
    tensileMinimum: ksi(65, "read", A572_MILL),
    tensileTypical: ksi(72, "memory", MILL),
    ...plannedHigh(ksi(85, "memory", MILL)),
    ...steel,
    ratingCovers: ksi(59.5, "derived", "0.7 x 85 ksi, the strongest sheet to plan with"),
    thicknessOver: "ASTM A6",
    knifeGap: hotRolledGap,
    radiusRule: { table: "ASTM A6", multiple: 1.5, mark: "memory" },
    hardeningExponent: ratio(
      0.15,
      "memory",
      "structural steel with a yield plateau: yield and tensile alone under-read it",
    ),
  },
  {
    name: "A1011 CS",
    aliases: ["A1011", "A1011 CS hot-rolled", "A1011 hot-rolled", "hot-rolled sheet", "HR sheet", "ASTM A1011 CS"],
    gaugeSeries: "steel",
    yieldTypical: ksi(36, "memory", MILL),
    tensileTypical: ksi(52, "memory", MILL),
    ...plannedHigh(ksi(68, "memory", MILL)),
    ...steel,
    ...mildSteelRating,
    thicknessOver: "sheet",
    knifeGap: hotRolledGap,
    radiusRule: { table: "DIN 6935" },
    ...hotRolledSheet,
  },
  {
    name: "A1008 CS",
    aliases: ["A1008", "A1008 CS cold-rolled", "A1008 cold-rolled", "cold-rolled sheet", "CR sheet", "ASTM A1008 CS"],
    gaugeSeries: "steel",
    yieldTypical: ksi(28, "memory", MILL),
    tensileTypical: ksi(44, "read", `${GROOVER}, low-carbon steel 300 MPa`),
    ...plannedHigh(ksi(58, "memory", MILL)),
    ...steel,
    ...mildSteelRating,
    thicknessOver: "sheet",
    knifeGap: softSteelGap,
    radiusRule: { table: "DIN 6935" },
    ...coldRolledSheet,
  },
  {
    name: "A653 CS",
    aliases: ["A653", "A653 CS galvanized", "galvanized", "galvanised", "galv", "ASTM A653 CS", "galvanized sheet"],
    gaugeSeries: "galvanized",
    yieldTypical: ksi(36, "memory", MILL),
    tensileTypical: ksi(50, "memory", MILL),
    ...plannedHigh(ksi(65, "memory", MILL)),
    ...steel,
    ...mildSteelRating,
    thicknessOver: "sheet",
    knifeGap: coatedSteelGap,
    radiusRule: { table: "DIN 6935" },
    ...coldRolledSheet,
  },
  {
    name: "A653 galvanneal",
    aliases: ["galvanneal", "galvannealed", "A653 CS galvanneal", "galvanneal sheet"],
    gaugeSeries: "galvanized",
    yieldTypical: ksi(36, "memory", `${MILL}, as galvanized sheet`),
    tensileTypical: ksi(50, "memory", `${MILL}, as galvanized sheet`),
    ...plannedHigh(ksi(65, "memory", `${MILL}, as galvanized sheet`)),
    ...steel,
    ...mildSteelRating,
    thicknessOver: "sheet",
    knifeGap: coatedSteelGap,
    radiusRule: { table: "DIN 6935" },
    ...coldRolledSheet,
  },
  {
    name: "1018 CR",
    aliases: ["1018", "1018 cold-rolled", "1018 cold-drawn", "C1018", "AISI 1018"],
    yieldTypical: ksi(54, "memory", "AISI 1018 cold-drawn, data sheets"),
    tensileTypical: ksi(64, "memory", "AISI 1018 cold-drawn, data sheets"),
    ...plannedHigh(ksi(75, "memory", MILL)),
    ...steel,
    ratingCovers: ksi(52.5, "derived", "0.7 x 75 ksi, the strongest bar to plan with"),
    thicknessOver: "sheet",
    gaugeSeries: "steel",
    knifeGap: ratio(0.075, "read", `${GROOVER_CLEARANCE}, half-hard cold-rolled steel`),
    radiusRule: { table: "DIN 6935" },
    usualRadius: ratio(1.5, "memory", "cold-finished bar cracks sooner than soft sheet"),
  },
];
