/**
 * Materials, edition 2026.1. A released edition is never edited: a correction is a new file with a new name, so that a
 * workbook that names its edition keeps its numbers. Strengths in ksi, densities in lb/in^3, as the sources print them.
 */
import { type Fact, fact, type Mark } from "../fact.ts";
import type { Edition, Material } from "./material.ts";

const ASTM_TABLE = "Mamlouk & Zaniewski, Materials for Civil and Construction Engineers, Table 3.2";
const GROOVER = "Groover, Fundamentals of Modern Manufacturing 5e, Tables 3.1, 3.2, 4.1";
const ALUMINUM_MANUAL = "Aluminum Design Manual, Table 3.3-1";
const KISSELL = "Kissell & Ferry, Aluminum Structures, ch. 4";
const A240 = "ASTM A240 Table 2";
const B209 = "ASTM B209";
const MILL = "usual mill values";
const COPPER = "ASTM B152 and B36, usual mill values";
const KALPAKJIAN = "Kalpakjian & Schmid, Manufacturing Engineering and Technology, Table 2.3";
const GROOVER_CLEARANCE = "Groover, Fundamentals of Modern Manufacturing 5e, Table 19.1";
const SHOP_RULE = "shop rule of thumb, air-bent radius as a share of the opening";
const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993";

const ksi = (value: number, mark: Mark, source: string): Fact => fact(value, "ksi", mark, source);
const poundsPerCubicInch = (value: number, mark: Mark, source: string): Fact => fact(value, "lb/in^3", mark, source);
const ratio = (value: number, mark: Mark, source: string): Fact => fact(value, "", mark, source);
const megapascals = (value: number, mark: Mark, source: string): Fact => fact(value, "MPa", mark, source);

const steel = {
  density: poundsPerCubicInch(0.284, "read", GROOVER),
  modulus: ksi(30000, "read", GROOVER),
  poisson: ratio(0.3, "memory", "textbook value for steel"),
  machinability: ratio(87.6, "memory", ZENG_KIM),
  airRadiusLow: ratio(5 / 32, "memory", SHOP_RULE),
  airRadiusHigh: ratio(0.16, "memory", SHOP_RULE),
  usualRadius: ratio(1, "memory", "usual on a brake for soft steel"),
} as const;

const hotRolledGap = ratio(0.065, "memory", "middle of 5-8 % of the thickness, hot-rolled plate on a guillotine");
const softSteelGap = ratio(0.06, "read", GROOVER_CLEARANCE);
/** The strength goes with the sheet's own tensile strength, K = UTS (e/n)^n; only the exponent is the annealed steel's. */
const lowCarbonHardening = {
  hardeningExponent: ratio(0.26, "read", `${KALPAKJIAN}, low-carbon steel, annealed`),
};

// No hardening figures here on purpose: the textbook exponent of annealed 304 (0.45) is fitted on large strains and bends
// to 0.28 of the opening, where shops find 0.20-0.22; the law from yield and tensile strength gives what shops find.
const stainless = {
  gaugeSeries: "stainless",
  density: poundsPerCubicInch(0.29, "memory", "AISI stainless data"),
  modulus: ksi(28000, "memory", "AISI stainless data"),
  poisson: ratio(0.3, "memory", "textbook value for steel"),
  knifeGap: ratio(0.06, "read", `${GROOVER_CLEARANCE}, soft stainless`),
  machinability: ratio(82, "memory", ZENG_KIM),
  airRadiusLow: ratio(0.2, "memory", SHOP_RULE),
  airRadiusHigh: ratio(0.22, "memory", SHOP_RULE),
  usualRadius: ratio(1, "memory", "usual on a brake for annealed 300-series"),
} as const;

const aluminum = {
  gaugeSeries: "aluminum",
  modulus: ksi(10000, "read", GROOVER),
  poisson: ratio(0.33, "memory", "textbook value for aluminum"),
  airRadiusLow: ratio(0.12, "memory", SHOP_RULE),
  airRadiusHigh: ratio(0.15, "memory", SHOP_RULE),
} as const;
const jetAsAlloy6061 = ratio(213, "memory", `${ZENG_KIM}, 6061-T6, taken for this alloy too`);

const copper = {
  modulus: ksi(16000, "memory", "copper alloys"),
  poisson: ratio(0.34, "memory", "textbook value for copper"),
  airRadiusLow: ratio(0.12, "memory", `${SHOP_RULE}, as soft aluminum`),
  airRadiusHigh: ratio(0.16, "memory", `${SHOP_RULE}, as mild steel`),
} as const;

const materials: readonly Material[] = [
  {
    name: "A36",
    aliases: ["ASTM A36", "A36 plate", "A36 steel", "SA36"],
    gaugeSeries: "steel",
    yieldMinimum: ksi(36, "read", ASTM_TABLE),
    tensileMinimum: ksi(58, "read", ASTM_TABLE),
    tensileTypical: ksi(65, "memory", MILL),
    tensileHigh: ksi(80, "read", ASTM_TABLE),
    tensileHighIs: "specification maximum",
    ...steel,
    knifeGap: hotRolledGap,
    radiusRule: { table: "ASTM A6", multiple: 1.5, mark: "read" },
  },
  {
    name: "A572-50",
    aliases: ["A572 Gr 50", "A572 Grade 50", "A572 50", "ASTM A572 Gr 50", "ASTM A572 Grade 50"],
    gaugeSeries: "steel",
    yieldMinimum: ksi(50, "read", ASTM_TABLE),
    tensileMinimum: ksi(65, "read", ASTM_TABLE),
    tensileTypical: ksi(72, "memory", MILL),
    tensileHigh: ksi(85, "memory", MILL),
    tensileHighIs: "planning value",
    ...steel,
    knifeGap: hotRolledGap,
    radiusRule: { table: "ASTM A6", multiple: 1.5, mark: "memory" },
  },
  {
    name: "A1011 CS",
    aliases: ["A1011", "A1011 CS hot-rolled", "A1011 hot-rolled", "hot-rolled sheet", "HR sheet", "ASTM A1011 CS"],
    gaugeSeries: "steel",
    tensileTypical: ksi(52, "memory", MILL),
    tensileHigh: ksi(68, "memory", MILL),
    tensileHighIs: "planning value",
    ...steel,
    knifeGap: hotRolledGap,
    radiusRule: { table: "DIN 6935" },
    ...lowCarbonHardening,
  },
  {
    name: "A1008 CS",
    aliases: ["A1008", "A1008 CS cold-rolled", "A1008 cold-rolled", "cold-rolled sheet", "CR sheet", "ASTM A1008 CS"],
    gaugeSeries: "steel",
    tensileTypical: ksi(44, "read", `${GROOVER}, low-carbon steel 300 MPa`),
    tensileHigh: ksi(58, "memory", MILL),
    tensileHighIs: "planning value",
    ...steel,
    knifeGap: softSteelGap,
    radiusRule: { table: "DIN 6935" },
    ...lowCarbonHardening,
  },
  {
    name: "A653 CS",
    aliases: ["A653", "A653 CS galvanized", "galvanized", "galvanised", "galv", "ASTM A653 CS", "galvanized sheet"],
    gaugeSeries: "galvanized",
    tensileTypical: ksi(50, "memory", MILL),
    tensileHigh: ksi(65, "memory", MILL),
    tensileHighIs: "planning value",
    ...steel,
    knifeGap: ratio(0.06, "memory", `${GROOVER_CLEARANCE}, soft cold-rolled steel, taken for coated sheet too`),
    radiusRule: { table: "DIN 6935" },
    ...lowCarbonHardening,
  },
  {
    name: "304",
    aliases: ["304 stainless", "SS304", "AISI 304", "304 SS", "S30400", "1.4301", "A240 304"],
    yieldMinimum: ksi(30, "memory", A240),
    tensileMinimum: ksi(75, "memory", A240),
    tensileTypical: ksi(90, "memory", MILL),
    tensileHigh: ksi(107, "memory", MILL),
    tensileHighIs: "planning value",
    ...stainless,
  },
  {
    name: "316",
    aliases: ["316 stainless", "SS316", "AISI 316", "316 SS", "S31600", "1.4401", "A240 316"],
    yieldMinimum: ksi(30, "memory", A240),
    tensileMinimum: ksi(75, "memory", A240),
    tensileTypical: ksi(85, "memory", MILL),
    tensileHigh: ksi(105, "memory", MILL),
    tensileHighIs: "planning value",
    ...stainless,
    machinability: ratio(82, "memory", `${ZENG_KIM}, 304, taken for 316 too`),
  },
  {
    name: "1100-H14",
    aliases: ["1100 H14"],
    yieldMinimum: ksi(14, "memory", B209),
    tensileMinimum: ksi(16, "memory", B209),
    tensileTypical: ksi(18, "memory", MILL),
    tensileHigh: ksi(21, "memory", MILL),
    tensileHighIs: "specification maximum",
    shearStrength: ksi(10, "memory", B209),
    density: poundsPerCubicInch(0.098, "read", GROOVER),
    ...aluminum,
    knifeGap: ratio(0.045, "read", GROOVER_CLEARANCE),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "1100-H14", mark: "read" },
    usualRadius: ratio(0, "memory", "soft commercial aluminum folds sharp in thin sheet"),
  },
  {
    name: "3003-H14",
    aliases: ["3003 H14"],
    yieldMinimum: ksi(17, "memory", B209),
    tensileMinimum: ksi(20, "memory", B209),
    tensileTypical: ksi(22, "memory", MILL),
    tensileHigh: ksi(26, "memory", MILL),
    tensileHighIs: "specification maximum",
    shearStrength: ksi(12, "memory", B209),
    density: poundsPerCubicInch(0.099, "memory", B209),
    ...aluminum,
    knifeGap: ratio(0.045, "memory", `${GROOVER_CLEARANCE}, 1100, taken for 3003 too`),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "1100-H14", mark: "memory" },
    usualRadius: ratio(0.5, "memory", "usual on a brake"),
  },
  {
    name: "5052-H32",
    aliases: ["5052 H32"],
    yieldMinimum: ksi(23, "read", ALUMINUM_MANUAL),
    tensileMinimum: ksi(31, "read", ALUMINUM_MANUAL),
    tensileTypical: ksi(33, "memory", MILL),
    tensileHigh: ksi(38, "memory", B209),
    tensileHighIs: "specification maximum",
    shearStrength: ksi(19, "read", ALUMINUM_MANUAL),
    density: poundsPerCubicInch(0.097, "memory", B209),
    ...aluminum,
    knifeGap: ratio(0.045, "read", GROOVER_CLEARANCE),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "5052-H32", mark: "read" },
    usualRadius: ratio(1, "memory", "usual on a brake"),
  },
  {
    name: "5052-H34",
    aliases: ["5052 H34"],
    yieldMinimum: ksi(26, "read", ALUMINUM_MANUAL),
    tensileMinimum: ksi(34, "read", ALUMINUM_MANUAL),
    tensileTypical: ksi(38, "memory", MILL),
    tensileHigh: ksi(41, "memory", B209),
    tensileHighIs: "specification maximum",
    shearStrength: ksi(20, "read", ALUMINUM_MANUAL),
    density: poundsPerCubicInch(0.097, "memory", B209),
    ...aluminum,
    knifeGap: ratio(0.045, "read", GROOVER_CLEARANCE),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "5052-H34", mark: "read" },
    foldsRoundNose: true,
    usualRadius: ratio(1.5, "memory", "usual on a brake"),
  },
  {
    name: "6061-T4",
    aliases: ["6061 T4"],
    yieldMinimum: ksi(16, "memory", B209),
    tensileMinimum: ksi(30, "memory", B209),
    tensileTypical: ksi(35, "memory", MILL),
    tensileHigh: ksi(40, "memory", MILL),
    tensileHighIs: "planning value",
    shearStrength: ksi(21, "memory", "aluminum data sheets"),
    density: poundsPerCubicInch(0.098, "read", GROOVER),
    ...aluminum,
    knifeGap: ratio(0.06, "read", GROOVER_CLEARANCE),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "6061-T4", mark: "read" },
    foldsRoundNose: true,
  },
  {
    name: "6061-T6",
    aliases: ["6061 T6", "6061-T651"],
    yieldMinimum: ksi(35, "memory", "Aluminum Design Manual"),
    tensileMinimum: ksi(42, "read", KISSELL),
    tensileTypical: ksi(45, "read", KISSELL),
    tensileHigh: ksi(48, "memory", MILL),
    tensileHighIs: "planning value",
    shearStrength: ksi(27, "memory", "Aluminum Design Manual, minimum; typical 30 ksi (read)"),
    density: poundsPerCubicInch(0.098, "read", GROOVER),
    ...aluminum,
    knifeGap: ratio(0.06, "read", GROOVER_CLEARANCE),
    machinability: ratio(213, "memory", ZENG_KIM),
    radiusRule: { table: "aluminum", row: "6061-T6", mark: "read" },
    foldsRoundNose: true,
    hardeningStrength: megapascals(410, "read", `${KALPAKJIAN}, 6061-T6`),
    hardeningExponent: ratio(0.05, "read", `${KALPAKJIAN}, 6061-T6`),
  },
  {
    name: "2024-T3",
    aliases: ["2024 T3"],
    yieldMinimum: ksi(42, "memory", B209),
    tensileMinimum: ksi(63, "memory", B209),
    tensileTypical: ksi(70, "memory", MILL),
    tensileHigh: ksi(75, "memory", MILL),
    tensileHighIs: "planning value",
    shearStrength: ksi(39, "memory", "aluminum data sheets"),
    density: poundsPerCubicInch(0.1, "memory", B209),
    ...aluminum,
    knifeGap: ratio(0.06, "read", GROOVER_CLEARANCE),
    machinability: jetAsAlloy6061,
    radiusRule: { table: "aluminum", row: "2024-T3", mark: "memory" },
    foldsRoundNose: true,
    hardeningStrength: megapascals(690, "read", `${KALPAKJIAN}, 2024-T4, taken for T3 too`),
    hardeningExponent: ratio(0.16, "read", `${KALPAKJIAN}, 2024-T4, taken for T3 too`),
  },
  {
    name: "C110 half hard",
    aliases: ["C110", "C11000", "C110 H02", "half-hard copper"],
    yieldMinimum: ksi(30, "memory", COPPER),
    tensileMinimum: ksi(37, "memory", COPPER),
    tensileTypical: ksi(42, "memory", COPPER),
    tensileHigh: ksi(46, "memory", COPPER),
    tensileHighIs: "planning value",
    density: poundsPerCubicInch(0.323, "memory", COPPER),
    ...copper,
    machinability: ratio(110, "memory", ZENG_KIM),
  },
  {
    name: "C260 half hard",
    aliases: ["C260", "C26000", "C260 H02", "half-hard brass"],
    yieldMinimum: ksi(40, "memory", COPPER),
    tensileMinimum: ksi(57, "memory", COPPER),
    tensileTypical: ksi(62, "memory", COPPER),
    tensileHigh: ksi(67, "memory", COPPER),
    tensileHighIs: "planning value",
    density: poundsPerCubicInch(0.308, "memory", COPPER),
    ...copper,
    knifeGap: ratio(0.06, "read", `${GROOVER_CLEARANCE}, brass, all tempers`),
  },
];

export const edition20261: Edition = { name: "2026.1", date: "2026-11-25", materials };
