/** Figures of edition 2026.2 as their sources print them, asked of MATERIAL.VALUE: ksi, lb/in3, in and plain ratios. */
import type { Basis, Published } from "./published.ts";

const KUTZ = "Kutz, Handbook of Materials Selection, Table 5, typical properties of wrought aluminum alloys";
const A36 = "ASTM A36-14 as in a mill's table of American grades, reprint";
const A572 = "ASTM A572-15 as in a mill's table of American grades, reprint";
const A213 = "ASTM A213 minimum properties, reprint";
const A240 = "ASTM A240 Table 2";
const PRODUCER = "producer's data sheet, 304 and 316 at 24 C";
const BOOKLET = "capacity booklet of a guillotine maker, reprint";
const PLANNING = "0.7 x the strength to plan with, by hand";
const MANUAL = "Aluminum Design Manual, Table 3.3-1";
const B209 = "ASTM B209";
const KALPAKJIAN = "Kalpakjian & Schmid, Manufacturing Engineering and Technology, Table 2.3";
const GROOVER = "Groover, Fundamentals of Modern Manufacturing 5e, Tables 4.1, 19.1";
const COPPER = "ASTM B152 and B36, usual values";
const MILL = "usual mill values";
const SHOPS = "common practice of shops";
const SHEETS = "usual data sheets";
const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993";

type Row = readonly [property: string, source: string, basis: Basis, ...[material: string, value: number][]];

// biome-ignore format: one property a line
const PROPERTIES: readonly Row[] = [
  ["yield typical", KUTZ, "read", ["1100-H14", 17], ["3003-H14", 21], ["5052-H32", 28], ["5052-H34", 31], ["6061-T6", 40], ["2024-T3", 50]],
  ["tensile typical", KUTZ, "read", ["1100-H14", 18], ["3003-H14", 22], ["5052-H32", 33], ["5052-H34", 38], ["6061-T6", 45], ["2024-T3", 70]],
  ["shear strength", KUTZ, "read", ["1100-H14", 11], ["3003-H14", 14], ["5052-H32", 20], ["5052-H34", 21], ["6061-T6", 30], ["2024-T3", 41]],
  ["modulus", KUTZ, "read", ["1100-O", 10000], ["1100-H14", 10000], ["3003-H14", 10000], ["5052-H32", 10200], ["5052-H34", 10200], ["6061-T4", 10000], ["6061-T6", 10000], ["2024-T3", 10600]],
  ["yield typical", KUTZ, "memory", ["1100-O", 5], ["6061-T4", 21]],
  ["tensile typical", KUTZ, "memory", ["1100-O", 13], ["6061-T4", 35]],
  ["shear strength", KUTZ, "memory", ["1100-O", 9], ["6061-T4", 24]],
  ["yield minimum", MANUAL, "read", ["5052-H32", 23], ["5052-H34", 26]],
  ["tensile minimum", MANUAL, "read", ["5052-H32", 31], ["5052-H34", 34]],
  ["yield minimum", MANUAL, "memory", ["6061-T6", 35]],
  ["yield minimum", B209, "memory", ["1100-O", 3.5], ["1100-H14", 14], ["3003-H14", 17], ["6061-T4", 16], ["2024-T3", 42]],
  ["tensile minimum", B209, "memory", ["1100-O", 11], ["1100-H14", 16], ["3003-H14", 20], ["6061-T4", 30], ["2024-T3", 63]],
  ["tensile minimum", "Kissell & Ferry, Aluminum Structures, ch. 4", "read", ["6061-T6", 42]],
  ["tensile high", B209, "memory", ["1100-O", 15.5], ["1100-H14", 21], ["3003-H14", 26], ["5052-H32", 38], ["5052-H34", 41], ["6061-T4", 40], ["6061-T6", 48], ["2024-T3", 75]],
  ["shear strength a rating covers", PLANNING, "derived", ["1100-O", 10.85], ["1100-H14", 14.7], ["3003-H14", 18.2], ["5052-H32", 26.6], ["5052-H34", 28.7], ["6061-T4", 28], ["6061-T6", 33.6], ["2024-T3", 52.5], ["A572-50", 59.5], ["1018 CR", 52.5]],
  ["shear strength a rating covers", BOOKLET, "read", ["A36", 50], ["A1011 CS", 50], ["A1008 CS", 50], ["A653 CS", 50], ["A653 galvanneal", 50]],
  ["shear strength a rating covers", "shop table of pressure to shear, as carried by a public page", "memory", ["304", 75], ["316", 75], ["316L", 75]],
  ["yield minimum", A36, "read", ["A36", 36]],
  ["tensile minimum", A36, "read", ["A36", 58]],
  ["tensile high", A36, "read", ["A36", 80]],
  ["yield minimum", A572, "read", ["A572-50", 50]],
  ["tensile minimum", A572, "read", ["A572-50", 65]],
  ["yield typical", MILL, "memory", ["A36", 42], ["A572-50", 56], ["A1011 CS", 36], ["A1008 CS", 28], ["A653 CS", 36], ["A653 galvanneal", 36], ["1018 CR", 54], ["316L", 38]],
  ["tensile typical", MILL, "memory", ["A36", 65], ["A572-50", 72], ["A1011 CS", 52], ["A653 CS", 50], ["A653 galvanneal", 50], ["1018 CR", 64], ["316L", 82]],
  ["tensile typical", `${GROOVER}, low-carbon steel 300 MPa`, "read", ["A1008 CS", 44]],
  ["tensile high", MILL, "memory", ["A572-50", 85], ["A1011 CS", 68], ["A1008 CS", 58], ["A653 CS", 65], ["A653 galvanneal", 65], ["1018 CR", 75], ["304", 107], ["316", 105], ["316L", 100]],
  ["yield minimum", A213, "read", ["304", 30]],
  ["tensile minimum", A213, "read", ["304", 75]],
  ["yield minimum", A240, "memory", ["316", 30], ["316L", 25]],
  ["tensile minimum", A240, "memory", ["316", 75], ["316L", 70]],
  ["yield typical", PRODUCER, "read", ["304", 39], ["316", 40]],
  ["tensile typical", PRODUCER, "read", ["304", 87], ["316", 84]],
  ["Poisson ratio", PRODUCER, "read", ["304", 0.28]],
  ["Poisson ratio", "textbook values", "memory", ["A36", 0.3], ["6061-T6", 0.33], ["C110 half hard", 0.34]],
  ["modulus", GROOVER, "read", ["A36", 30000]],
  ["modulus", "AISI stainless data; copper alloys", "memory", ["304", 28000], ["C110 half hard", 16000]],
  ["hardening exponent", KALPAKJIAN, "read", ["1100-O", 0.2], ["6061-T6", 0.05]],
  ["hardening exponent", `${KALPAKJIAN}, 2024-T4, taken for T3 too`, "memory", ["2024-T3", 0.16]],
  ["hardening exponent", "structural steel with a yield plateau", "memory", ["A572-50", 0.15]],
  ["density", GROOVER, "read", ["A36", 0.284], ["1100-O", 0.098], ["1100-H14", 0.098], ["6061-T4", 0.098], ["6061-T6", 0.098]],
  ["density", "Aluminum Association; AISC weights, as carried by a public program", "memory", ["5052-H32", 0.097], ["5052-H34", 0.097]],
  ["density", SHEETS, "memory", ["304", 0.29], ["3003-H14", 0.099], ["2024-T3", 0.1], ["C110 half hard", 0.323], ["C260 half hard", 0.308], ["Composite panel", 0.0497], ["Expanded steel 3/4-9", 0.0933], ["Plywood", 0.022], ["Acrylic", 0.043]],
  ["nominal thickness", SHEETS, "memory", ["Composite panel", 0.157], ["Expanded steel 3/4-9", 0.134]],
  ["yield minimum", COPPER, "memory", ["C110 half hard", 30], ["C260 half hard", 40]],
  ["yield typical", COPPER, "memory", ["C110 half hard", 36], ["C260 half hard", 52]],
  ["tensile minimum", COPPER, "memory", ["C110 half hard", 37], ["C260 half hard", 57]],
  ["tensile typical", COPPER, "memory", ["C110 half hard", 42], ["C260 half hard", 62]],
  ["tensile high", COPPER, "memory", ["C110 half hard", 46], ["C260 half hard", 67]],
  ["knife gap", GROOVER, "read", ["A1008 CS", 0.06], ["1018 CR", 0.075], ["304", 0.06], ["1100-O", 0.045], ["1100-H14", 0.045], ["5052-H32", 0.045], ["5052-H34", 0.045], ["6061-T4", 0.06], ["6061-T6", 0.06], ["2024-T3", 0.06], ["C260 half hard", 0.06]],
  ["knife gap", `${GROOVER}, the neighbor taken; hot-rolled 5-8 %`, "memory", ["A36", 0.065], ["A653 CS", 0.06], ["3003-H14", 0.045]],
  ["machinability", ZENG_KIM, "memory", ["A36", 87.6], ["304", 82], ["316", 82], ["316L", 82], ["5052-H32", 213], ["6061-T6", 213], ["C110 half hard", 110]],
  ["air radius low", SHOPS, "memory", ["A36", 5 / 32], ["304", 0.2], ["5052-H32", 0.12], ["C110 half hard", 0.12]],
  ["air radius high", SHOPS, "memory", ["A36", 0.16], ["304", 0.22], ["C110 half hard", 0.16]],
  ["air radius high", "The Fabricator, Predicting an air-formed sheet metal inside bend radius", "read", ["5052-H32", 0.15]],
  ["usual radius", SHOPS, "memory", ["A36", 0.8], ["1018 CR", 1.5], ["304", 1], ["1100-O", 0], ["1100-H14", 0], ["3003-H14", 0.5], ["5052-H32", 0.7], ["5052-H34", 1.5]],
];

const strengths: readonly Published[] = (
  [
    ["1100-O", 180, "read"],
    ["6061-T6", 410, "read"],
    ["2024-T3", 690, "memory"], // printed of 2024-T4
  ] as const
).map(([material, value, basis]) => ({
  id: `2026.2: ${material}, hardening strength`,
  call: ["MATERIAL.VALUE", material, "hardening strength", "mm", "2026.2"] as const,
  expected: value,
  tolerance: 1e-9,
  source: KALPAKJIAN,
  basis,
}));

const leastRadii: readonly Published[] = (
  [
    ["A36", "read"],
    ["A572-50", "memory"],
  ] as const
).map(([material, basis]) => ({
  id: `2026.2: ${material}, least radius of 1/4 in`,
  call: ["BEND.MINRADIUS", material, 0.25, null, "in", "2026.2"] as const,
  expected: 0.375,
  tolerance: 1e-9,
  source: "ASTM A6/A6M Appendix X4, Table X4.2: groups A to E 1.5 t",
  basis,
}));

const properties: readonly Published[] = PROPERTIES.flatMap(([name, source, basis, ...values]) =>
  values.map(
    ([material, value]): Published => ({
      id: `2026.2: ${material}, ${name}`,
      call: ["MATERIAL.VALUE", material, name, "in", "2026.2"],
      expected: value,
      tolerance: 1e-9,
      source,
      basis,
    }),
  ),
);

export const materials20262: readonly Published[] = [...properties, ...strengths, ...leastRadii];
