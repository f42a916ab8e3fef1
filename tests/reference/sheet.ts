/**
 * Gauges, weights and material properties. Not here, because no cell function answers it: the statute's weight per
 * square foot (it rests on wrought iron, 480 lb/ft3; the shop weighs steel).
 */
import { GROOVER_5, type Published } from "./published.ts";

const STATUTE = "15 U.S.C. 206, United States Standard Gauge";
const MANUFACTURERS = "Manufacturers' Standard Gauge, published table";
const GALVANIZED = "published galvanized sheet gauge table";
const AWG = "ASTM B258 / Brown & Sharpe, published table";
const MAMLOUK = "Mamlouk & Zaniewski, Materials for Civil and Construction Engineers, Table 3.2";
const ALUMINUM_TYPICAL = "Aluminum Association, Aluminum Standards and Data, typical properties";
const KUTZ = "Kutz, Handbook of Materials Selection, Table 5, typical properties of wrought aluminum alloys";
const A213 = "ASTM A213 minimum properties, reprint";
const KALPAKJIAN = "Kalpakjian & Schmid, Manufacturing Engineering and Technology, Table 2.3";
const CLEARANCES = `${GROOVER_5}, Table 19.1`;
const blank = null;

const gauge = (
  material: string,
  number: number | string,
  expected: number,
  source: string,
  basis: Published["basis"],
): Published => ({
  id: `${material} gauge ${number}`,
  call: ["SHEET.THICKNESS", number, material],
  expected,
  tolerance: 5.1e-5, // tables print four places
  source,
  basis,
});

const property = (
  material: string,
  name: string,
  units: "in" | "mm",
  expected: number,
  tolerance: number,
  source: string,
  basis: Published["basis"],
): Published => ({
  id: `${material}, ${name} in ${units}`,
  call: ["MATERIAL.VALUE", material, name, units],
  expected,
  tolerance,
  source,
  basis,
});

export const sheet: readonly Published[] = [
  gauge("stainless", 3, 0.25, STATUTE, "read"),
  gauge("stainless", 10, 0.140625, STATUTE, "read"),
  gauge("stainless", 13, 0.09375, STATUTE, "read"),
  gauge("stainless", 16, 0.0625, STATUTE, "read"),
  gauge("stainless", 20, 0.0375, STATUTE, "read"),
  gauge("stainless", 11, 0.125, "published stainless tables", "read"),
  gauge("304", 14, 0.0781, "published stainless tables", "read"),
  gauge("steel", 10, 0.1345, MANUFACTURERS, "read"),
  gauge("A1011 CS", 11, 0.1196, MANUFACTURERS, "read"),
  gauge("steel", "14 ga", 0.0747, MANUFACTURERS, "read"),
  gauge("A1008 CS", "16", 0.0598, MANUFACTURERS, "read"),
  gauge("galvanized", 10, 0.1382, GALVANIZED, "read"),
  gauge("A653 CS", 16, 0.0635, GALVANIZED, "read"),
  gauge("aluminum", 0, 0.3249, AWG, "read"),
  gauge("5052-H32", 10, 0.1019, AWG, "read"),
  gauge("aluminum", 14, 0.0641, AWG, "read"),
  gauge("6061-T6", "16 ga", 0.0508, AWG, "read"),
  gauge("aluminum", "4/0", 0.46, AWG, "read"),
  gauge("aluminum", "000", 0.4096, AWG, "memory"),
  gauge("aluminum", 36, 0.005, AWG, "read"),

  property("A36", "yield minimum", "in", 36, 1e-9, MAMLOUK, "read"),
  property("A36", "tensile minimum", "in", 58, 1e-9, MAMLOUK, "read"),
  property("A36", "tensile high", "in", 80, 1e-9, MAMLOUK, "read"),
  property("A572-50", "yield minimum", "in", 50, 1e-9, MAMLOUK, "read"),
  property("A572-50", "tensile minimum", "in", 65, 1e-9, MAMLOUK, "read"),
  // The metric table rounds to 5 MPa: 31, 23 and 19 ksi stand in the inch table.
  property("5052-H32", "tensile minimum", "mm", 215, 2.5, "Aluminum Design Manual, Table 3.3-1M", "read"),
  property("5052-H32", "yield minimum", "mm", 160, 2.5, "Aluminum Design Manual, Table 3.3-1M", "read"),
  property("5052-H32", "shear strength", "mm", 130, 2.5, "Aluminum Design Manual, Table 3.3-1M", "read"),
  property("6061-T6", "tensile minimum", "in", 42, 1e-9, "Kissell & Ferry, Aluminum Structures, ch. 4", "read"),
  property("3003-H14", "tensile minimum", "in", 20, 1e-9, "ASTM B209", "memory"),
  property("3003-H14", "yield minimum", "in", 17, 1e-9, "ASTM B209", "memory"),
  property("3003-H14", "shear strength", "in", 12, 1e-9, "Aluminum Design Manual", "memory"),
  property("1100-H14", "tensile minimum", "in", 16, 1e-9, "ASTM B209", "memory"),
  property("1100-H14", "yield minimum", "in", 14, 1e-9, "ASTM B209", "memory"),
  property("1100-H14", "shear strength", "in", 10, 1e-9, "Aluminum Design Manual", "memory"),
  property("304", "tensile minimum", "in", 75, 1e-9, A213, "read"),
  property("304", "yield minimum", "in", 30, 1e-9, A213, "read"),
  property("316", "tensile minimum", "in", 75, 1e-9, "ASTM A240 Table 2", "memory"),
  property("316", "yield minimum", "in", 30, 1e-9, "ASTM A240 Table 2", "memory"),
  property("A36", "modulus", "in", 30000, 1e-9, `${GROOVER_5}, Table 3.1, 30e6 psi`, "read"),
  property("A36", "modulus", "mm", 209000, 2500, `${GROOVER_5}, Table 3.1, 209,000 MPa beside 30e6 psi`, "read"),
  property("6061-T6", "modulus", "in", 10000, 1e-9, `${GROOVER_5}, Table 3.1, 10e6 psi`, "read"),
  property("6061-T6", "modulus", "mm", 69000, 100, `${GROOVER_5}, Table 3.1`, "read"),
  property("A36", "density", "in", 0.284, 1e-9, `${GROOVER_5}, Table 4.1`, "read"),
  property("6061-T6", "density", "in", 0.098, 1e-9, `${GROOVER_5}, Table 4.1`, "read"),
  property("A36", "density", "mm", 7.87e-6, 0.02e-6, `${GROOVER_5}, Table 4.1, 7.87 g/cm3`, "read"),
  property("6061-T6", "density", "mm", 2.7e-6, 0.02e-6, `${GROOVER_5}, Table 4.1, 2.70 g/cm3`, "read"),

  property("304", "density", "mm", 8.0e-6, 0.05e-6, "AISI / handbook, 8.0 g/cm3", "memory"),
  property("304", "modulus", "mm", 193_000, 1000, "AISI / handbook, 193 GPa", "memory"),
  property("316", "density", "mm", 8.0e-6, 0.05e-6, "AISI / handbook, 8.0 g/cm3", "memory"),
  property("3003-H14", "density", "mm", 2.73e-6, 0.015e-6, ALUMINUM_TYPICAL, "memory"),
  property("5052-H32", "density", "mm", 2.68e-6, 0.015e-6, ALUMINUM_TYPICAL, "memory"),
  property("5052-H34", "density", "mm", 2.68e-6, 0.015e-6, ALUMINUM_TYPICAL, "memory"),
  property("2024-T3", "density", "mm", 2.78e-6, 0.015e-6, ALUMINUM_TYPICAL, "memory"),
  property(
    "C110 half hard",
    "density",
    "mm",
    8.94e-6,
    0.02e-6,
    "Copper Development Association, 0.323 lb/in3",
    "memory",
  ),
  property(
    "C260 half hard",
    "density",
    "mm",
    8.53e-6,
    0.02e-6,
    "Copper Development Association, 0.308 lb/in3",
    "memory",
  ),
  property("1100-H14", "tensile typical", "in", 18, 0.5, KUTZ, "read"),
  property("3003-H14", "tensile typical", "in", 22, 0.5, KUTZ, "read"),
  property("5052-H32", "tensile typical", "in", 33, 0.5, KUTZ, "read"),
  property("5052-H34", "tensile typical", "in", 38, 0.5, KUTZ, "read"),
  property("6061-T4", "tensile typical", "in", 35, 0.5, ALUMINUM_TYPICAL, "memory"),
  property("6061-T6", "tensile typical", "in", 45, 0.5, "Kissell & Ferry, Aluminum Structures, ch. 4", "read"),
  property("2024-T3", "tensile typical", "in", 70, 0.5, KUTZ, "read"),
  property("A1008 CS", "tensile typical", "mm", 300, 5, `${GROOVER_5}, Table 3.2, low-carbon steel`, "read"),
  property("A1011 CS", "hardening exponent", "mm", 0.26, 1e-9, KALPAKJIAN, "read"),
  property("6061-T6", "hardening strength", "mm", 410, 1e-6, KALPAKJIAN, "read"),
  property("6061-T6", "hardening exponent", "mm", 0.05, 1e-9, KALPAKJIAN, "read"),
  property("1100-H14", "knife gap", "in", 0.045, 1e-9, CLEARANCES, "read"),
  property("5052-H32", "knife gap", "in", 0.045, 1e-9, CLEARANCES, "read"),
  property("2024-T3", "knife gap", "in", 0.06, 1e-9, CLEARANCES, "read"),
  property("304", "knife gap", "in", 0.06, 1e-9, CLEARANCES, "read"),
  property("C260 half hard", "knife gap", "in", 0.06, 1e-9, CLEARANCES, "read"),

  {
    id: "a 4 x 8 ft plate of 1/4 in",
    call: ["BLANK.WEIGHT", "A36", 0.25, 96, 48],
    expected: 327.2,
    tolerance: 0.1,
    source: `density ${GROOVER_5}, Table 4.1`,
    basis: "derived",
  },
  {
    id: "a square foot of 1/4 in steel plate",
    call: ["BLANK.WEIGHT", "A36", "1/4", "1 ft", "12 in"],
    expected: 10.21,
    tolerance: 0.03,
    source: "AISC Steel Construction Manual, plate 1/4 in: 10.21 lb/ft2 at 490 lb/ft3",
    basis: "memory",
  },
  {
    id: "a square meter of 10 mm steel",
    call: ["BLANK.WEIGHT", "A36", 10, 1000, 1000, blank, "mm"],
    expected: 78.5,
    tolerance: 0.2,
    source: "EN 1991-1-1 and handbooks: steel 7850 kg/m3",
    basis: "memory",
  },
  {
    id: "a square foot of 1/8 in 1100 sheet",
    call: ["BLANK.WEIGHT", "1100-H14", 0.125, 12, 12],
    expected: 1.764,
    tolerance: 0.005,
    source: "Aluminum Association sheet weights, 0.098 lb/in3",
    basis: "memory",
  },
];
