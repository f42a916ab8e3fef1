/**
 * Whole published tables, so that no figure of the data can drift unnoticed. Where only part of a table was read in a
 * text, the rows say which; the rest is memory, unverified.
 */
import { type Basis, GROOVER_5, type Published, type PublishedFormula } from "./published.ts";

const EXACT = 1e-9;
const STATUTE = "15 U.S.C. 206, United States Standard Gauge, thickness at 640 oz per square foot and inch";
const MANUFACTURERS = "Manufacturers' Standard Gauge, published table";
const GALVANIZED = "published galvanized sheet gauge table";
const AWG = "ASTM B258 / Brown & Sharpe, published table";
const ALUMINUM_RADII =
  "Aluminum Association-type table of minimum 90-degree cold-bend radii, reprinted in a public design notebook; Aluminum Design Manual 2005, Part VII, Table 3-1, reprint";
const DIN_RADII = "DIN 6935 (1975-10) as reprinted";
const NIOSH = "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation";
const NIOSH_WORKSHEET = `${NIOSH}, job analysis worksheet, reprint`;
const ISO_LENGTHS = "ISO 2768-1 Table 1";
const ISO_ANGLES = "ISO 2768-1 Table 3";
const MAMLOUK = "Mamlouk & Zaniewski, Materials for Civil and Construction Engineers, Table 3.2";
const ALUMINUM_MANUAL = "Aluminum Design Manual, Table 3.3-1";
const B209 = "ASTM B209";
const COPPER = "ASTM B152 and B36";
const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993, machinability numbers";
const KALPAKJIAN = "Kalpakjian & Schmid, Manufacturing Engineering and Technology, Table 2.3";
const KUTZ = "Kutz, Handbook of Materials Selection, Table 5, typical properties of wrought aluminum alloys";
const MILL = "usual mill values";
const TEXTBOOK = "textbook value of Poisson's ratio";

/** First gauge, then the thicknesses in inches as printed, one gauge after the other. Tables print four places. */
// biome-ignore format: as the tables are printed
const GAUGES: readonly (readonly [material: string, source: string, first: number, ...inches: number[]])[] = [
  ["steel", MANUFACTURERS, 3, 0.2391, 0.2242, 0.2092, 0.1943, 0.1793, 0.1644, 0.1495, 0.1345, 0.1196, 0.1046, 0.0897,
    0.0747, 0.0673, 0.0598, 0.0538, 0.0478, 0.0418, 0.0359, 0.0329, 0.0299, 0.0269, 0.0239, 0.0209, 0.0179, 0.0164,
    0.0149, 0.0135, 0.012, 0.0105, 0.0097, 0.009, 0.0082, 0.0075, 0.0067, 0.0064, 0.006],
  ["galvanized", GALVANIZED, 8, 0.1681, 0.1532, 0.1382, 0.1233, 0.1084, 0.0934, 0.0785, 0.071, 0.0635, 0.0575, 0.0516,
    0.0456, 0.0396, 0.0366, 0.0336, 0.0306, 0.0276, 0.0247, 0.0217, 0.0202, 0.0187, 0.0172, 0.0157, 0.0142, 0.0134],
  ["stainless", STATUTE, 0, 0.3125, 0.28125, 0.265625, 0.25, 0.234375, 0.21875, 0.203125, 0.1875, 0.171875, 0.15625,
    0.140625, 0.125, 0.109375, 0.09375, 0.078125, 0.0703125, 0.0625, 0.05625, 0.05, 0.04375, 0.0375, 0.034375, 0.03125,
    0.028125, 0.025, 0.021875, 0.01875, 0.0171875, 0.015625, 0.0140625, 0.0125, 0.0109375, 0.01015625, 0.009375,
    0.00859375, 0.0078125, 0.00703125, 0.006640625, 0.00625],
  ["aluminum", AWG, 0, 0.3249, 0.2893, 0.2576, 0.2294, 0.2043, 0.1819, 0.162, 0.1443, 0.1285, 0.1144, 0.1019, 0.0907,
    0.0808, 0.072, 0.0641, 0.0571, 0.0508, 0.0453, 0.0403, 0.0359, 0.032, 0.0285, 0.0253, 0.0226, 0.0201, 0.0179,
    0.0159, 0.0142, 0.0126, 0.0113, 0.01],
];
/** The gauges that a sheet gauge thickness chart of four series prints, which was read in a reprint; the others memory. */
const CHART: readonly (string | number)[] = [7, 8, 9, 10, 11, 12, 13, 14, 16, 18, 20, 22, 24, 26, 28, 30];
const onChart = (material: string, gauge: string | number): boolean =>
  CHART.includes(gauge) && !(material === "galvanized" && gauge === 7);
/** Heavier than 1/0: the zeros. */
const ZEROS: readonly (readonly [material: string, gauge: string, inches: number])[] = [
  ["stainless", "7/0", 0.5],
  ["stainless", "6/0", 0.46875],
  ["stainless", "5/0", 0.4375],
  ["stainless", "4/0", 0.40625],
  ["stainless", "3/0", 0.375],
  ["stainless", "2/0", 0.34375],
  ["aluminum", "2/0", 0.3648],
];
const PRINTED = 5.1e-5;

const gauges = [
  ...GAUGES.flatMap(([material, source, first, ...inches]) =>
    inches.map((each, i) => [material, source, first + i, each] as const),
  ),
  ...ZEROS.map(([material, gauge, each]) => [material, material === "aluminum" ? AWG : STATUTE, gauge, each] as const),
].map(
  ([material, source, gauge, inches]): Published => ({
    id: `table: ${material} gauge ${gauge}`,
    call: ["SHEET.THICKNESS", gauge, material],
    expected: inches,
    tolerance: PRINTED,
    source: onChart(material, gauge) ? `${source}; sheet gauge thickness chart of four series, reprint` : source,
    basis: onChart(material, gauge) ? "read" : "memory",
  }),
);

/** Read in two reprints (3003-H14 and 2024-T3 in the second): [material, in multiples of the thickness at 1/64 1/32 1/16 1/8 3/16 1/4 3/8 1/2 in]. */
const ALUMINUM: readonly (readonly [string, Basis, ...number[]])[] = [
  ["1100-H14", "read", 0, 0, 0, 1, 1, 1.5, 2, 2.5],
  ["3003-H14", "read", 0, 0, 0, 1, 1, 1.5, 2, 2.5],
  ["5052-H32", "read", 0, 0, 1, 1.5, 1.5, 1.5, 1.5, 2],
  ["5052-H34", "read", 0, 1, 1.5, 2, 2, 2.5, 2.5, 3],
  ["6061-T4", "read", 0, 0, 1, 1.5, 2.5, 3, 3.5, 4],
  ["6061-T6", "read", 1, 1, 1.5, 2.5, 3, 3.5, 4.5, 5],
  ["2024-T3", "read", 2.5, 3, 4, 5, 5, 6, 7, 7.5],
];
const COLUMNS = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2];
/** The table's least thickness in which a column rules: a hair above the column before. */
const HAIR = 1.001;

const aluminumRadii = ALUMINUM.flatMap(([alloy, basis, ...multiples]) =>
  multiples.flatMap((multiple, i) =>
    [COLUMNS[i]!, ...(i === 0 ? [] : [COLUMNS[i - 1]! * HAIR])].map(
      (inches): Published => ({
        id: `table: least radius of ${alloy} in ${inches} in`,
        call: ["BEND.MINRADIUS", alloy, inches],
        expected: multiple * inches,
        tolerance: EXACT,
        source: `${ALUMINUM_RADII}; between two columns the thicker rules`,
        basis,
      }),
    ),
  ),
);

/** [thickness up to mm, least radius mm for tensile strengths up to 390, 490, 640 MPa]. */
const DIN: readonly (readonly [number, number, number, number])[] = [
  [1, 1, 1.2, 1.6],
  [1.5, 1.6, 2, 2.5],
  [2.5, 2.5, 3, 4],
  [3, 3, 4, 5],
  [4, 5, 5, 6],
  [5, 6, 8, 8],
  [6, 8, 10, 10],
  [7, 10, 12, 12],
  [8, 12, 16, 16],
  [10, 16, 20, 20],
  [12, 20, 25, 25],
];
const sheetOf = (tensile: number) => [
  ["Name", "Tensile typical (MPa)", "Source"],
  ["A1011 CS", tensile, "the table's own class"],
];
const CLASSES = [390, 490, 640];
const dinRadii = DIN.flatMap(([upTo, ...radii], row) =>
  radii.flatMap((radius, column) => {
    const before = DIN[row - 1]?.[0];
    return [upTo, ...(before === undefined ? [] : [before * HAIR])].flatMap((thickness) =>
      [CLASSES[column]!, ...(column === 0 ? [] : [CLASSES[column - 1]! + 0.5])].map(
        (tensile): Published => ({
          id: `table: least radius of steel of ${tensile} MPa, ${thickness} mm`,
          call: ["BEND.MINRADIUS", "A1011 CS", thickness, "across", "mm", sheetOf(tensile)],
          expected: radius,
          tolerance: EXACT,
          source: DIN_RADII,
          basis: "read",
        }),
      ),
    );
  }),
);

/**
 * [lifts a minute, multiplier for up to 1, 2 and 8 hours with the hands below 30 in; the same from 30 in up]. To 10 lifts
 * and the two 8 h figures from 30 in up read in a reprint of the manual's worksheet; the rest memory.
 */
const FREQUENCY: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [0.2, 1, 0.95, 0.85, 1, 0.95, 0.85],
  [0.5, 0.97, 0.92, 0.81, 0.97, 0.92, 0.81],
  [1, 0.94, 0.88, 0.75, 0.94, 0.88, 0.75],
  [2, 0.91, 0.84, 0.65, 0.91, 0.84, 0.65],
  [3, 0.88, 0.79, 0.55, 0.88, 0.79, 0.55],
  [4, 0.84, 0.72, 0.45, 0.84, 0.72, 0.45],
  [5, 0.8, 0.6, 0.35, 0.8, 0.6, 0.35],
  [6, 0.75, 0.5, 0.27, 0.75, 0.5, 0.27],
  [7, 0.7, 0.42, 0.22, 0.7, 0.42, 0.22],
  [8, 0.6, 0.35, 0.18, 0.6, 0.35, 0.18],
  [9, 0.52, 0.3, 0, 0.52, 0.3, 0.15],
  [10, 0.45, 0.26, 0, 0.45, 0.26, 0.13],
  [11, 0.41, 0, 0, 0.41, 0.23, 0],
  [12, 0.37, 0, 0, 0.37, 0.21, 0],
  [13, 0, 0, 0, 0.34, 0, 0],
  [14, 0, 0, 0, 0.31, 0, 0],
  [15, 0, 0, 0, 0.28, 0, 0],
];
const HOURS = [1, 2, 8];
/** Height of the hands in inches, and its own multiplier 1 - 0.0075 |V - 30|. */
const HEIGHTS = [
  [20, 0.925],
  [30, 1],
] as const;
const frequency = FREQUENCY.flatMap(([lifts, ...multipliers]) =>
  multipliers.map((multiplier, i): Published => {
    const [vertical, byHeight] = HEIGHTS[Math.floor(i / 3)]!;
    const readHere = lifts <= 10 && (i < 3 || multiplier === multipliers[i - 3] || i === 5);
    return {
      id: `table: ${lifts} lifts a minute for ${HOURS[i % 3]} h, hands at ${vertical} in`,
      call: ["LIFT.LIMIT", 10, vertical, 10, 0, lifts, "good", HOURS[i % 3]!],
      expected: 51 * byHeight * multiplier,
      tolerance: EXACT,
      source: `${NIOSH}, Table 5`,
      basis: readHere ? "read" : "memory",
    };
  }),
);

/** [over mm, up to and including mm, classes f, m, c, v]; "-" where the standard gives none. */
type ToleranceRow = readonly [over: number, upTo: number, ...classes: (number | "-")[]];
const LENGTHS: readonly ToleranceRow[] = [
  [0.5, 3, 0.05, 0.1, 0.2, "-"],
  [3, 6, 0.05, 0.1, 0.3, 0.5],
  [6, 30, 0.1, 0.2, 0.5, 1],
  [30, 120, 0.15, 0.3, 0.8, 1.5],
  [120, 400, 0.2, 0.5, 1.2, 2.5],
  [400, 1000, 0.3, 0.8, 2, 4],
  [1000, 2000, 0.5, 1.2, 3, 6],
  [2000, 4000, "-", 2, 4, 8],
];
/** What reprints were read for, by the class's place in f, m, c, v and the row's upper end in mm. */
const READ_CLASSES: Readonly<Record<string, (place: number, upTo: number) => boolean>> = {
  "TOLERANCE.LENGTH": (place, upTo) => place !== 2 || upTo > 6,
  "TOLERANCE.ANGLE": (place) => place < 2,
};
/** Minutes of arc. */
const ANGLES: readonly ToleranceRow[] = [
  [0, 10, 60, 60, 90, 180],
  [10, 50, 30, 30, 60, 120],
  [50, 120, 20, 20, 30, 60],
  [120, 400, 10, 10, 15, 30],
  [400, 5000, 5, 5, 10, 20],
];
const tolerances = (name: string, rows: readonly ToleranceRow[], size: number, source: string): Published[] =>
  rows.flatMap(([over, upTo, ...classes]) =>
    classes.flatMap((value, i) =>
      value === "-"
        ? []
        : [over * HAIR, upTo]
            .filter((nominal) => nominal > 0)
            .map(
              (nominal): Published => ({
                id: `table: ${name} ${nominal} mm class ${"fmcv"[i]}`,
                call: [name, nominal, "fmcv"[i]!, "mm"],
                expected: value / size,
                tolerance: EXACT,
                source,
                basis: READ_CLASSES[name]!(i, upTo) ? "read" : "memory",
              }),
            ),
    ),
  );

/** ksi, lb/in3 and plain ratios, as the specifications print them. */
// biome-ignore format: one property a line
const PROPERTIES: readonly (readonly [name: string, source: string, basis: Basis, ...[material: string, value: number][]])[] = [
  ["yield minimum", ALUMINUM_MANUAL, "read", ["5052-H34", 26]],
  ["yield minimum", B209, "memory", ["6061-T4", 16], ["2024-T3", 42]],
  ["yield minimum", ALUMINUM_MANUAL, "memory", ["6061-T6", 35]],
  ["yield minimum", COPPER, "memory", ["C110 half hard", 30], ["C260 half hard", 40]],
  ["tensile minimum", ALUMINUM_MANUAL, "read", ["5052-H32", 31], ["5052-H34", 34]],
  ["tensile minimum", B209, "memory", ["6061-T4", 30], ["2024-T3", 63]],
  ["tensile minimum", COPPER, "memory", ["C110 half hard", 37], ["C260 half hard", 57]],
  ["tensile high", `${B209}, maximum`, "memory", ["1100-H14", 21], ["3003-H14", 26], ["5052-H32", 38], ["5052-H34", 41]],
  ["tensile high", `${COPPER}, maximum`, "memory", ["C110 half hard", 46], ["C260 half hard", 67]],
  ["tensile high", MAMLOUK, "read", ["A36", 80]],
  ["shear strength", ALUMINUM_MANUAL, "read", ["5052-H32", 19], ["5052-H34", 20]],
  ["shear strength", ALUMINUM_MANUAL, "memory", ["6061-T6", 27]],
  ["density", `${GROOVER_5}, Table 4.1`, "read", ["1100-H14", 0.098], ["6061-T4", 0.098]],
  ["density", "Aluminum Association, Aluminum Standards and Data", "memory", ["3003-H14", 0.099], ["5052-H32", 0.097], ["5052-H34", 0.097], ["2024-T3", 0.1]],
  ["density", "Copper Development Association", "memory", ["C110 half hard", 0.323], ["C260 half hard", 0.308]],
  ["density", "AISI stainless data", "memory", ["304", 0.29], ["316", 0.29]],
  ["modulus", "AISI stainless data", "memory", ["304", 28000]],
  ["modulus", "copper alloys, 16e6 psi", "memory", ["C110 half hard", 16000]],
  ["tensile typical", KUTZ, "read", ["1100-H14", 18], ["3003-H14", 22], ["5052-H32", 33], ["5052-H34", 38], ["2024-T3", 70]],
  ["tensile typical", "Aluminum Association, Aluminum Standards and Data, typical properties", "memory", ["6061-T4", 35]],
  ["tensile typical", "Kissell & Ferry, Aluminum Structures, ch. 4", "read", ["6061-T6", 45]],
  ["Poisson ratio", TEXTBOOK, "memory", ["A36", 0.3], ["304", 0.3], ["6061-T6", 0.33], ["C110 half hard", 0.34]],
  ["machinability", ZENG_KIM, "memory", ["A36", 87.6], ["304", 82], ["6061-T6", 213], ["C110 half hard", 110]],
  ["knife gap", `${GROOVER_5}, Table 19.1`, "read", ["1100-H14", 0.045], ["5052-H34", 0.045], ["6061-T4", 0.06], ["A1008 CS", 0.06]],
  ["tensile typical", MILL, "memory", ["A36", 65], ["A572-50", 72], ["A1011 CS", 52], ["A653 CS", 50], ["304", 90], ["316", 85], ["C110 half hard", 42], ["C260 half hard", 62]],
  ["tensile high", `${MILL}, planning value`, "memory", ["A572-50", 85], ["A1011 CS", 68], ["A1008 CS", 58], ["A653 CS", 65], ["304", 107], ["316", 105], ["6061-T4", 40], ["6061-T6", 48], ["2024-T3", 75]],
  ["shear strength", "aluminum data sheets", "memory", ["6061-T4", 21], ["2024-T3", 39]],
  ["machinability", `${ZENG_KIM}, the neighbor taken`, "memory", ["316", 82], ["5052-H32", 213]],
  ["knife gap", `${GROOVER_5}, Table 19.1, the neighbor taken`, "memory", ["3003-H14", 0.045], ["A653 CS", 0.06]],
  ["usual radius", "in thicknesses, usual on a brake (common practice)", "memory", ["A36", 1], ["304", 1], ["1100-H14", 0], ["3003-H14", 0.5], ["5052-H32", 1], ["5052-H34", 1.5]],
  ["knife gap", "middle of 5-8 % of the thickness, hot-rolled plate on a guillotine", "memory", ["A36", 0.065]],
  ["hardening exponent", KALPAKJIAN, "read", ["2024-T3", 0.16]],
];
const properties = PROPERTIES.flatMap(([name, source, basis, ...values]) =>
  values.map(
    ([material, value]): Published => ({
      id: `table: ${material}, ${name}`,
      call: ["MATERIAL.VALUE", material, name],
      expected: value,
      tolerance: EXACT,
      source,
      basis,
    }),
  ),
);

/** 1100-O is in edition 2026.2 alone. */
const SOFT = [0, 0, 0, 0, 0.5, 1, 1, 1.5];
const softRadii = SOFT.map(
  (multiple, i): Published => ({
    id: `table: least radius of 1100-O in ${COLUMNS[i]} in`,
    call: ["BEND.MINRADIUS", "1100-O", COLUMNS[i]!, null, "in", "2026.2"],
    expected: multiple * COLUMNS[i]!,
    tolerance: EXACT,
    source: ALUMINUM_RADII,
    basis: "read",
  }),
);

export const tables: readonly Published[] = [
  ...softRadii,
  ...gauges,
  ...aluminumRadii,
  ...dinRadii,
  ...frequency,
  ...tolerances("TOLERANCE.LENGTH", LENGTHS, 1, ISO_LENGTHS),
  ...tolerances("TOLERANCE.ANGLE", ANGLES, 60, ISO_ANGLES),
  ...properties,
  {
    id: "table: least radius of A572-50",
    call: ["BEND.MINRADIUS", "A572-50", 0.25],
    expected: 0.375,
    tolerance: EXACT,
    source: "ASTM A6/A6M Appendix X4, Table X4.2: groups A to E 1.5 t",
    basis: "memory",
  },
  {
    id: "table: American wire gauge 40",
    call: ["SHEET.THICKNESS", 40, "aluminum"],
    expected: 0.0031,
    tolerance: 5.1e-5,
    source: AWG,
    basis: "memory",
  },
  {
    id: "table: poor grip from 30 in",
    call: ["LIFT.LIMIT", 10, 30, 10, 0, 0.2, "poor", 1],
    expected: 51 * 0.9,
    tolerance: EXACT,
    source: `${NIOSH}, coupling multipliers`,
    basis: "memory",
  },
  {
    id: "table: hardening strength of 2024-T3",
    call: ["MATERIAL.VALUE", "2024-T3", "hardening strength", "mm"],
    expected: 690,
    tolerance: EXACT,
    source: `${KALPAKJIAN}, 2024-T4`,
    basis: "read",
  },
];

/** Where a table ends there is no answer. */
const ends = (formula: string, source: string, basis: Basis = "memory"): PublishedFormula => ({
  id: `no answer: ${formula}`,
  formula: `=IF(ISNA(${formula}),1,0)`,
  expected: 1,
  tolerance: 0,
  source,
  basis,
});

export const tableFormulas: readonly PublishedFormula[] = [
  ends('SHOP.SHEET.THICKNESS(2,"steel")', `${MANUFACTURERS} begins at 3`, "read"),
  ends('SHOP.SHEET.THICKNESS(39,"steel")', `${MANUFACTURERS} ends at 38`),
  ends('SHOP.SHEET.THICKNESS(7,"galvanized")', `${GALVANIZED} begins at 8`, "read"),
  ends('SHOP.SHEET.THICKNESS(33,"galvanized")', `${GALVANIZED} ends at 32`),
  ends('SHOP.SHEET.THICKNESS(39,"stainless")', `${STATUTE} ends at 38`),
  ends('SHOP.SHEET.THICKNESS("5/0","aluminum")', "ASTM B258 begins at 4/0", "read"),
  ends('SHOP.SHEET.THICKNESS(41,"aluminum")', `${AWG} ends at 40`),
  ends('SHOP.BEND.MINRADIUS("A36",0.7501)', "ASTM A6 Table X4.2 ends at 3/4 in", "read"),
  ends('SHOP.BEND.MINRADIUS("6061-T6",0.5001)', ALUMINUM_RADII, "read"),
  ends('SHOP.BEND.MINRADIUS("A1008 CS",12.01,,"mm")', DIN_RADII, "read"),
  ends('SHOP.TOLERANCE.LENGTH(0.49,"m","mm")', ISO_LENGTHS),
  ends('SHOP.TOLERANCE.LENGTH(4000.1,"m","mm")', ISO_LENGTHS),
  ends('SHOP.TOLERANCE.LENGTH(2000.1,"f","mm")', ISO_LENGTHS),
  ends('SHOP.TOLERANCE.LENGTH(3,"v","mm")', ISO_LENGTHS),
  ends('SHOP.LIFT.LIMIT(25.1,30,10,0,0.2,"good",1)', `${NIOSH_WORKSHEET}, no lift beyond 25 in`, "read"),
  ends('SHOP.LIFT.LIMIT(10,70.1,10,0,0.2,"good",1)', `${NIOSH_WORKSHEET}, no lift above 70 in`, "read"),
  ends('SHOP.LIFT.LIMIT(10,0,70.1,0,0.2,"good",1)', `${NIOSH_WORKSHEET}, no travel over 70 in`, "read"),
  ends('SHOP.LIFT.LIMIT(10,30,10,135.1,0.2,"good",1)', `${NIOSH_WORKSHEET}, no twist over 135 degrees`, "read"),
];
